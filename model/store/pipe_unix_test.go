//go:build unix

package store

import (
	"fmt"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

// A pipe nobody writes to would make a careless open wait for ever.
func TestPipesAreRefused(t *testing.T) {
	s := newShop(t, "one")
	pipe := filepath.Join(filepath.Dir(s.path), "pipe")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	var kind *NotRegularError
	_, _, err := s.env(disk{}).open(pipe)
	require.ErrorAs(t, err, &kind)
	dir, err := disk{}.OpenFolder(filepath.Dir(pipe))
	require.NoError(t, err)
	defer dir.Close()
	_, err = dir.Read("pipe", MaxBytes)
	require.ErrorAs(t, err, &kind)
}

// A shell gives the output of a command as the name of an open pipe.
func TestAnOpenPipeIsRefusedByItsName(t *testing.T) {
	if _, err := os.Stat("/dev/fd"); err != nil {
		t.Skip("no /dev/fd on this system")
	}
	r, w, err := os.Pipe()
	require.NoError(t, err)
	defer r.Close()
	defer w.Close()
	var kind *NotRegularError
	_, _, err = newShop(t, "one").env(disk{}).open(fmt.Sprintf("/dev/fd/%d", r.Fd()))
	require.ErrorAs(t, err, &kind)
}

// TestErrorsNameTheWholePath: a file name alone does not say which disk is full.
func TestErrorsNameTheWholePath(t *testing.T) {
	s := newShop(t, "one")
	dir, err := disk{}.OpenFolder(filepath.Dir(s.path))
	require.NoError(t, err)
	defer dir.Close()
	_, reading := dir.Read("gone", MaxBytes)
	_, looking := dir.Lstat("gone")
	_, making := dir.Create(filepath.Base(s.path), 0o600)
	for _, err := range []error{reading, looking, making} {
		var named *os.PathError
		require.ErrorAs(t, err, &named)
		require.Equal(t, filepath.Dir(s.path), filepath.Dir(named.Path))
	}
}
