package store

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// maxVersions is how many previous versions of a file are kept.
const maxVersions = 10

// versionEnd ends the name of a previous version; a number comes before it.
const versionEnd = ".old"

// StateFolder is where this program keeps what no person edits: $XDG_STATE_HOME of the
// XDG Base Directory Specification 0.8 if it is an absolute path, else the system's
// folder for settings.
func StateFolder() (string, error) {
	if dir := os.Getenv("XDG_STATE_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "lugbook"), nil
	}
	dir, err := os.UserConfigDir()
	if err == nil && !filepath.IsAbs(dir) {
		err = errors.New("the folder for settings is not an absolute path")
	}
	if err != nil {
		return "", err
	}
	return filepath.Join(dir, "lugbook"), nil
}

func versionsFolder() (string, error) {
	state, err := StateFolder()
	return filepath.Join(state, "versions"), err
}

// Versions lists the paths of the kept previous versions of a file, newest first. None
// is no error.
func (f *File) Versions() ([]string, error) {
	path := f.env.folderOf(f.Path())
	if path == "" {
		return nil, nil
	}
	dir, err := f.env.sys.OpenFolder(path)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	defer dir.Close()
	numbers, err := versionNumbers(dir)
	if err != nil {
		return nil, err
	}
	var paths []string
	for _, n := range slices.Backward(numbers) {
		paths = append(paths, filepath.Join(path, versionName(n)))
	}
	return paths, nil
}

// folderOf is the folder with the previous versions of a file. The file's path is
// hashed, so that it tells nothing and fits any file system.
func (e env) folderOf(path string) string {
	if e.versions == "" {
		return ""
	}
	return filepath.Join(e.versions, fmt.Sprintf("%x", sha256.Sum256([]byte(path))))
}

// keep stores the bytes that a save is about to replace and gives their path. Failure
// does not stop the save: it is a warning.
func (e env) keep(path string, data []byte, out *Outcome) string {
	const what = "the previous version could not be kept"
	folder := e.folderOf(path)
	if folder == "" {
		out.warn(what, errors.New("this system names no folder for it"))
		return ""
	}
	kept, err := e.keepIn(folder, data)
	switch {
	case err != nil && kept != "":
		out.warn("old versions could not be removed", err)
	case err != nil:
		out.warn(what, err)
	}
	return kept
}

// keepIn gives the path of the kept version; with an error as well if only the tidying
// after it failed.
func (e env) keepIn(path string, data []byte) (string, error) {
	if err := e.sys.MakeFolders(path); err != nil {
		return "", err
	}
	dir, err := e.sys.OpenFolder(path)
	if err != nil {
		return "", err
	}
	defer dir.Close()
	numbers, err := versionNumbers(dir)
	if err != nil {
		return "", err
	}
	next := 1
	if len(numbers) > 0 {
		newest := numbers[len(numbers)-1]
		old, err := dir.Read(versionName(newest), MaxBytes)
		if err == nil && bytes.Equal(old, data) {
			return filepath.Join(path, versionName(newest)), nil
		}
		next = newest + 1
	}
	name := versionName(next)
	var flushed Outcome // a version that the drive does not confirm is better than none
	temp, err := writeTemp(dir, path, name, data, private, nil, &flushed)
	if err != nil {
		return "", err
	}
	if err := dir.Rename(temp, name); err != nil {
		return "", discard(dir, path, temp, err)
	}
	settle(dir, &flushed)
	return filepath.Join(path, name), prune(dir, append(numbers, next))
}

// prune removes the oldest versions beyond the ring.
func prune(dir folder, numbers []int) error {
	for _, n := range numbers[:max(len(numbers)-maxVersions, 0)] {
		if err := dir.Remove(versionName(n)); err != nil {
			return err
		}
	}
	return nil
}

func versionName(n int) string { return fmt.Sprintf("%08d%s", n, versionEnd) }

// versionNumbers lists the numbers of the versions in a folder, oldest first.
func versionNumbers(dir folder) ([]int, error) {
	names, err := dir.Names()
	if err != nil {
		return nil, err
	}
	var numbers []int
	for _, name := range names {
		digits, ok := strings.CutSuffix(name, versionEnd)
		n, err := strconv.Atoi(digits)
		if ok && err == nil && n > 0 && name == versionName(n) {
			numbers = append(numbers, n)
		}
	}
	slices.Sort(numbers)
	return numbers, nil
}
