package store

import (
	"crypto/sha256"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// MaxBytes is the largest file that this package reads or writes: 2 MiB.
const MaxBytes = 2 << 20

// Hash identifies the bytes of a file.
type Hash [sha256.Size]byte

// HashOf is the SHA-256 of data.
func HashOf(data []byte) Hash { return sha256.Sum256(data) }

// File is a file that was read and may be saved. It holds nothing open. Its methods
// must not run at the same time.
type File struct {
	env     env
	folder  string
	base    string
	known   Hash // of the bytes last read or saved
	attempt Hash // of the bytes of the last save that failed; the failure may have been in the report alone
}

// env is where files and previous versions are kept.
type env struct {
	sys      system
	versions string // folder; "" if there is none
}

// Open reads a file. A symbolic link is followed here, once: saving replaces the file
// that it leads to, never the link. Fails with [NotRegularError], [SizeError] or an error
// of the system.
func Open(path string) (*File, []byte, error) {
	return standard().open(path)
}

// resolve makes a path absolute and follows its symbolic links. Every error names the path.
func resolve(path string) (string, error) {
	absolute, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	full, err := filepath.EvalSymlinks(absolute)
	if info, there := os.Stat(absolute); err != nil && there == nil { // a pipe behind /dev/fd leads nowhere by name
		return "", &NotRegularError{Path: path, Mode: info.Mode()}
	}
	var named *fs.PathError
	if err != nil && !errors.As(err, &named) {
		return "", &fs.PathError{Op: "open", Path: path, Err: err}
	}
	return full, err
}

func standard() env {
	versions, err := versionsFolder()
	if err != nil {
		versions = ""
	}
	return env{sys: disk{}, versions: versions}
}

func (e env) open(path string) (*File, []byte, error) {
	full, err := resolve(path)
	if err != nil {
		return nil, nil, err
	}
	if filepath.Dir(full) == full {
		return nil, nil, &NotRegularError{Path: full, Mode: fs.ModeDir}
	}
	f := &File{env: e, folder: filepath.Dir(full), base: filepath.Base(full)}
	dir, err := e.sys.OpenFolder(f.folder)
	if err != nil {
		return nil, nil, err
	}
	defer dir.Close()
	if _, err := f.lstat(dir); err != nil {
		return nil, nil, err
	}
	data, err := dir.Read(f.base, MaxBytes)
	if err != nil {
		return nil, nil, err
	}
	f.known = HashOf(data)
	return f, data, nil
}

// Path is the file's own path, with symbolic links resolved.
func (f *File) Path() string { return filepath.Join(f.folder, f.base) }

// Known is the hash of the bytes that were last read or saved here.
func (f *File) Known() Hash { return f.known }

// Changed reports whether the file is no longer what was last read or saved here.
func (f *File) Changed() (bool, error) {
	dir, err := f.env.sys.OpenFolder(f.folder)
	if errors.Is(err, fs.ErrNotExist) {
		return true, nil
	}
	if err != nil {
		return false, err
	}
	defer dir.Close()
	data, err := dir.Read(f.base, MaxBytes)
	var size *SizeError
	var kind *NotRegularError
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.As(err, &size), errors.As(err, &kind):
		return true, nil
	case err != nil:
		return false, err
	}
	return !f.ours(HashOf(data)), nil
}

// ours reports whether a hash is that of bytes which this program put into the file or
// read from it.
func (f *File) ours(h Hash) bool {
	return h == f.known || h == f.attempt && f.attempt != Hash{}
}

// Leftovers lists the temporary files that killed saves of this file left in its
// folder. One of them may belong to a save that another program is doing right now.
func (f *File) Leftovers() ([]string, error) {
	dir, err := f.env.sys.OpenFolder(f.folder)
	if err != nil {
		return nil, err
	}
	defer dir.Close()
	names, err := dir.Names()
	if err != nil {
		return nil, err
	}
	var left []string
	for _, name := range names {
		if isTempOf(f.base, name) {
			left = append(left, filepath.Join(f.folder, name))
		}
	}
	return left, nil
}

// lstat finds a plain file.
func (f *File) lstat(dir folder) (fs.FileInfo, error) {
	info, err := dir.Lstat(f.base)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, &NotRegularError{Path: f.Path(), Mode: info.Mode()}
	}
	return info, nil
}

// tempRandom is how many random characters stand in a temporary name.
const tempRandom = 8

// tempName is a hidden name beside the file. A long name is cut: a file system allows
// 255 bytes.
func tempName(base, random string) string { return tempPrefix(base) + random + ".tmp" }

func tempPrefix(base string) string {
	const longest = 200
	if len(base) > longest {
		base = strings.ToValidUTF8(base[:longest], "")
	}
	return "." + base + "."
}

func isTempOf(base, name string) bool {
	random, ok := strings.CutPrefix(name, tempPrefix(base))
	random, end := strings.CutSuffix(random, ".tmp")
	return ok && end && len(random) == tempRandom
}
