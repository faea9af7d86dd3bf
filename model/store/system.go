package store

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// system is what a save asks of the file system. The tests put a failing one in its
// place.
type system interface {
	OpenFolder(path string) (folder, error)
	MakeFolders(path string) error // 0700, with their parents
}

// folder is one open folder. Names are those of files directly in it; a folder that is
// renamed or replaced meanwhile is still the one that was opened.
type folder interface {
	Create(name string, mode fs.FileMode) (file, error) // new and empty; fails if the name is taken
	Read(name string, limit int64) ([]byte, error)
	Lstat(name string) (fs.FileInfo, error)
	Chown(name string, uid, gid int) error
	Rename(from, to string) error // replaces
	Link(from, to string) error   // fails if the name is taken
	Remove(name string) error
	Names() ([]string, error)
	Sync() error
	Close() error
}

// file is a new file that is being written.
type file interface {
	io.Writer
	Chmod(mode fs.FileMode) error
	Sync() error
	Close() error
}

// disk is the real system.
type disk struct{}

func (disk) OpenFolder(path string) (folder, error) {
	root, err := os.OpenRoot(path)
	if err != nil {
		return nil, err
	}
	return realFolder{Root: root}, nil
}

func (disk) MakeFolders(path string) error { return os.MkdirAll(path, 0o700) }

type realFolder struct{ *os.Root }

func (d realFolder) Create(name string, mode fs.FileMode) (file, error) {
	f, err := d.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return nil, d.located(err)
	}
	return f, nil
}

func (d realFolder) Lstat(name string) (fs.FileInfo, error) {
	info, err := d.Root.Lstat(name)
	return info, d.located(err)
}

// located makes an error name the whole path: a folder names the file in it alone.
func (d realFolder) located(err error) error {
	var named *fs.PathError
	if errors.As(err, &named) && !filepath.IsAbs(named.Path) {
		return &fs.PathError{Op: named.Op, Path: filepath.Join(d.Root.Name(), named.Path), Err: named.Err}
	}
	return err
}

// Read reads a plain file. It does not wait for a pipe that took the file's place.
func (d realFolder) Read(name string, limit int64) ([]byte, error) {
	path := filepath.Join(d.Root.Name(), name)
	f, err := d.OpenFile(name, os.O_RDONLY|openNoWait, 0)
	if err != nil {
		return nil, d.located(err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, &NotRegularError{Path: path, Mode: info.Mode()}
	}
	data, err := io.ReadAll(io.LimitReader(f, limit+1))
	if err != nil {
		return nil, err
	}
	if int64(len(data)) > limit {
		return nil, &SizeError{Path: path, Limit: limit}
	}
	return data, nil
}

func (d realFolder) Rename(from, to string) error { return rename(d.Root, from, to) }

func (d realFolder) Names() ([]string, error) {
	f, err := d.Open(".")
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return f.Readdirnames(-1)
}

func (d realFolder) Sync() error { return syncFolder(d.Root) }
