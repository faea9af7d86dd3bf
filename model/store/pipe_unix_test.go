//go:build unix

package store

import (
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
