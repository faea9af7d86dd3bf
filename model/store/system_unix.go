//go:build unix

package store

import (
	"io/fs"
	"os"
	"syscall"
)

// openNoWait keeps an open of a pipe without a writer from waiting for one.
const openNoWait = syscall.O_NONBLOCK

func rename(root *os.Root, from, to string) error { return root.Rename(from, to) }

// syncFolder makes the names in a folder durable.
func syncFolder(root *os.Root) error {
	f, err := root.Open(".")
	if err != nil {
		return err
	}
	err = f.Sync()
	if closing := f.Close(); err == nil {
		err = closing
	}
	return err
}

// links counts the names of a file.
func links(info fs.FileInfo) int {
	if s, ok := info.Sys().(*syscall.Stat_t); ok {
		return int(s.Nlink)
	}
	return 1
}

// owner is the user and group of a file; ok is false if they are those that a new file
// gets anyway.
func owner(info fs.FileInfo) (uid, gid int, ok bool) {
	s, known := info.Sys().(*syscall.Stat_t)
	if !known || int(s.Uid) == os.Geteuid() && int(s.Gid) == os.Getegid() {
		return 0, 0, false
	}
	return int(s.Uid), int(s.Gid), true
}

// cannotSync reports a flush that the file system does not offer, as against one that
// failed. Network shares and memory file systems answer so.
func cannotSync(err error) bool {
	return isAny(err, syscall.EINVAL, syscall.ENOTSUP, syscall.EOPNOTSUPP, syscall.ENOSYS, syscall.ENOTTY)
}

// cannotLink reports a file system without hard links.
func cannotLink(err error) bool {
	return isAny(err, syscall.EPERM, syscall.ENOTSUP, syscall.EOPNOTSUPP, syscall.ENOSYS, syscall.EMLINK)
}

// badPath reports a path that cannot lead to a file.
func badPath(err error) bool {
	return isAny(err, syscall.ENOTDIR, syscall.EISDIR, syscall.ENAMETOOLONG, syscall.ELOOP)
}
