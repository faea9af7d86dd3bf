package store

import (
	"io/fs"
	"strings"
	"syscall"
)

// fault is the real disk with one call, or every call from one on, that fails.
type fault struct {
	at    int   // number of the call that fails, from 1; 0: none
	after bool  // every later call fails, too
	done  bool  // the call does its work and then reports the failure
	short bool  // a write stops half way and reports nothing
	err   error // what is reported

	calls []string
}

func (s *fault) hits(call string) bool {
	s.calls = append(s.calls, call)
	n := len(s.calls)
	return s.at > 0 && (n == s.at || s.after && n > s.at)
}

// do runs a call, or fails it.
func (s *fault) do(call string, work func() error) error {
	if !s.hits(call) {
		return work()
	}
	if s.done {
		_ = work()
	}
	return &fs.PathError{Op: call, Path: "x", Err: s.err}
}

func (s *fault) OpenFolder(path string) (folder, error) {
	var dir folder
	err := s.do("open folder", func() (err error) { dir, err = disk{}.OpenFolder(path); return err })
	if err != nil {
		if dir != nil {
			dir.Close()
		}
		return nil, err
	}
	return &faultFolder{folder: dir, sys: s}, nil
}

func (s *fault) MakeFolders(path string) error {
	return s.do("make folders", func() error { return disk{}.MakeFolders(path) })
}

type faultFolder struct {
	folder
	sys *fault
}

func (d *faultFolder) Create(name string, mode fs.FileMode) (file, error) {
	var f file
	err := d.sys.do("create", func() (err error) { f, err = d.folder.Create(name, mode); return err })
	if err != nil {
		if f != nil {
			f.Close()
		}
		return nil, err
	}
	return &faultFile{file: f, sys: d.sys}, nil
}

func (d *faultFolder) Read(name string, limit int64) (data []byte, err error) {
	err = d.sys.do("read", func() (err error) { data, err = d.folder.Read(name, limit); return err })
	return data, err
}

func (d *faultFolder) Lstat(name string) (info fs.FileInfo, err error) {
	err = d.sys.do("lstat", func() (err error) { info, err = d.folder.Lstat(name); return err })
	return info, err
}

func (d *faultFolder) Rename(from, to string) error {
	return d.sys.do("rename", func() error { return d.folder.Rename(from, to) })
}

func (d *faultFolder) Link(from, to string) error {
	return d.sys.do("link", func() error { return d.folder.Link(from, to) })
}

func (d *faultFolder) Remove(name string) error {
	return d.sys.do("remove", func() error { return d.folder.Remove(name) })
}

func (d *faultFolder) Names() (names []string, err error) {
	err = d.sys.do("names", func() (err error) { names, err = d.folder.Names(); return err })
	return names, err
}

// Sync flushes nothing, here and below: without a power cut it makes no difference, and
// there are thousands of saves.
func (d *faultFolder) Sync() error { return d.sys.do("sync folder", func() error { return nil }) }

type faultFile struct {
	file
	sys *fault
}

func (f *faultFile) Write(data []byte) (n int, err error) {
	if f.sys.short && f.sys.at == len(f.sys.calls)+1 {
		f.sys.calls = append(f.sys.calls, "write")
		return f.file.Write(data[:len(data)/2])
	}
	err = f.sys.do("write", func() error { n, err = f.file.Write(data); return err })
	return n, err
}

func (f *faultFile) Chmod(mode fs.FileMode) error {
	return f.sys.do("chmod", func() error { return f.file.Chmod(mode) })
}

func (f *faultFile) Sync() error { return f.sys.do("sync", func() error { return nil }) }

// Close closes the real file whatever is reported, so that the tests leak none.
func (f *faultFile) Close() error {
	err := f.file.Close()
	return f.sys.do("close", func() error { return err })
}

// faultErrors are what systems report; each is tried at each call.
var faultErrors = []error{
	syscall.EIO, syscall.ENOSPC, syscall.EDQUOT, syscall.EACCES, syscall.EROFS, syscall.EINTR, syscall.ESTALE,
	syscall.EINVAL, syscall.ENOTSUP, syscall.ENOSYS, syscall.ENOTTY, fs.ErrNotExist, fs.ErrExist,
}

func trace(s *fault) string { return strings.Join(s.calls, ", ") }

// lies reports a system that says a file exists which it made itself, or that a file is
// gone which is there: no program could tidy up after it.
func (s *fault) lies() bool {
	call := s.calls[s.at-1]
	return s.done && s.err == fs.ErrExist && call == "create" || !s.done && s.err == fs.ErrNotExist && call == "remove"
}
