package store

import (
	"io/fs"
	"os"
	"syscall"
	"time"
)

const openNoWait = 0

// Errors of Windows while another program, such as a virus scanner or an indexer,
// has the file open. Microsoft, "System Error Codes (0-499)".
const (
	accessDenied     = syscall.Errno(5)
	sharingViolation = syscall.Errno(32)
	lockViolation    = syscall.Errno(33)
)

// rename tries again while another program has the file open, which it mostly has for
// some tens of milliseconds.
func rename(root *os.Root, from, to string) error {
	err := root.Rename(from, to)
	for wait := 10 * time.Millisecond; wait <= 400*time.Millisecond && isAny(err, accessDenied, sharingViolation, lockViolation); wait *= 2 {
		time.Sleep(wait)
		err = root.Rename(from, to)
	}
	return err
}

// syncFolder does nothing: Windows has no flush of a folder.
func syncFolder(*os.Root) error { return syscall.ENOTSUP }

func links(fs.FileInfo) int { return 1 }

func owner(fs.FileInfo) (uid, gid int, ok bool) { return 0, 0, false }

func cannotSync(err error) bool { return isAny(err, syscall.EINVAL, syscall.ENOTSUP, syscall.ENOSYS) }

func cannotLink(err error) bool {
	const invalidFunction, notSupported = syscall.Errno(1), syscall.Errno(50)
	return isAny(err, invalidFunction, notSupported, syscall.ENOTSUP, syscall.ENOSYS)
}

func badPath(err error) bool {
	const invalidName, notAFolder = syscall.Errno(123), syscall.Errno(267)
	return isAny(err, invalidName, notAFolder, syscall.ENOTDIR, syscall.EISDIR, syscall.ENAMETOOLONG)
}
