// Package store saves one file so that nothing is lost: after a kill, a crash or a full
// disk the file holds, byte for byte, what it held before or what was saved.
//
// [Open] reads a file and remembers its hash. [File.Save] never opens the file for
// writing. It writes a temporary file in the same folder, flushes it, reads it back, keeps
// the bytes that stood in the file as a previous version, makes sure that nobody else
// changed the file meanwhile, renames the temporary file over it and flushes the folder.
// Any other order loses data at some moment of a power cut; T. Pillai and others, "All
// File Systems Are Not Created Equal", OSDI 2014, list the ways.
//
// A flush that fails is never tried again on the same file: after a failure the
// system may drop the unwritten pages and report success (A. Rebello and others, "Can
// Applications Recover from fsync Failures?", USENIX ATC 2020). A later Save starts
// afresh from memory.
//
// Errors name files as the system does, with whatever their names hold: print them
// through package clean.
package store
