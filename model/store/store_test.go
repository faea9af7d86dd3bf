package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

// shop is a folder with one file and a folder for versions.
type shop struct {
	t              *testing.T
	path, versions string
}

func newShop(t *testing.T, content string) shop {
	t.Helper()
	return newShopIn(t, t.TempDir(), content)
}

// newMemoryShop is in memory where the system has a folder for that: for tests that save
// thousands of times and do not look at the disk.
func newMemoryShop(t *testing.T) shop {
	t.Helper()
	dir, err := os.MkdirTemp("/dev/shm", "shop")
	if err != nil {
		return newShop(t, "")
	}
	t.Cleanup(func() { require.NoError(t, os.RemoveAll(dir)) })
	return newShopIn(t, dir, "")
}

func newShopIn(t *testing.T, dir, content string) shop {
	t.Helper()
	dir, err := filepath.EvalSymlinks(dir)
	require.NoError(t, err)
	s := shop{t: t, path: filepath.Join(dir, "work", "cart.yaml"), versions: filepath.Join(dir, "state", "versions")}
	require.NoError(t, os.Mkdir(filepath.Dir(s.path), 0o755))
	require.NoError(t, os.WriteFile(s.path, []byte(content), 0o640))
	return s
}

func (s shop) env(sys system) env { return env{sys: sys, versions: s.versions} }

func (s shop) open() *File {
	s.t.Helper()
	f, _, err := s.env(disk{}).open(s.path)
	require.NoError(s.t, err)
	return f
}

func (s shop) content() string {
	s.t.Helper()
	data, err := os.ReadFile(s.path)
	require.NoError(s.t, err)
	return string(data)
}

// reset empties the folders and writes the file anew.
func (s shop) reset(content string) {
	s.t.Helper()
	require.NoError(s.t, os.RemoveAll(s.versions))
	for _, name := range s.names() {
		require.NoError(s.t, os.Remove(filepath.Join(filepath.Dir(s.path), name)))
	}
	require.NoError(s.t, os.WriteFile(s.path, []byte(content), 0o640))
}

// names lists what is in the folder of the file.
func (s shop) names() []string {
	s.t.Helper()
	entries, err := os.ReadDir(filepath.Dir(s.path))
	require.NoError(s.t, err)
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	return names
}

func TestSaveReplacesAndKeeps(t *testing.T) {
	s := newShop(t, "one")
	f, data, err := s.env(disk{}).open(s.path)
	require.NoError(t, err)
	require.Equal(t, "one", string(data))
	require.Equal(t, s.path, f.Path())
	for _, next := range []string{"two", "three", ""} {
		before := s.content()
		out, err := f.Save([]byte(next), Options{})
		require.NoError(t, err)
		require.Empty(t, out.Warnings)
		require.LessOrEqual(t, out.Assurance, Unconfirmed)
		require.Equal(t, next, s.content())
		require.Equal(t, HashOf([]byte(next)), f.Known())
		kept, err := os.ReadFile(out.Previous)
		require.NoError(t, err)
		require.Equal(t, before, string(kept))
	}
	info, err := os.Stat(s.path)
	require.NoError(t, err)
	require.Equal(t, fs.FileMode(0o640), info.Mode().Perm())
	require.Equal(t, []string{"cart.yaml"}, s.names())
}

func TestVersionsAreARing(t *testing.T) {
	s := newShop(t, "v0")
	f := s.open()
	none, err := f.Versions()
	require.NoError(t, err)
	require.Empty(t, none)
	for i := 1; i <= maxVersions+3; i++ {
		_, err := f.Save(fmt.Appendf(nil, "v%d", i), Options{})
		require.NoError(t, err)
	}
	paths, err := f.Versions()
	require.NoError(t, err)
	require.Len(t, paths, maxVersions)
	for i, path := range paths {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, fmt.Sprintf("v%d", maxVersions+2-i), string(data))
		info, err := os.Stat(path)
		require.NoError(t, err)
		require.Equal(t, fs.FileMode(0o600), info.Mode().Perm())
	}
	info, err := os.Stat(filepath.Dir(paths[0]))
	require.NoError(t, err)
	require.Equal(t, fs.FileMode(0o700), info.Mode().Perm())

	_, err = f.Save([]byte("v13"), Options{}) // the same again: one new version
	require.NoError(t, err)
	_, err = f.Save([]byte("v13"), Options{}) // and once more: none
	require.NoError(t, err)
	again, err := f.Versions()
	require.NoError(t, err)
	require.Equal(t, paths[:maxVersions-1], again[1:])
}

func TestSaveWithoutAPlaceForVersionsWarns(t *testing.T) {
	s := newShop(t, "one")
	require.NoError(t, os.WriteFile(filepath.Dir(s.versions), nil, 0o600)) // a file where a folder should be
	out, err := s.open().Save([]byte("two"), Options{})
	require.NoError(t, err)
	require.Len(t, out.Warnings, 1)
	require.Contains(t, out.Warnings[0], "the previous version could not be kept")
	require.Empty(t, out.Previous)
	require.Equal(t, "two", s.content())
}

func TestSaveNoticesOtherPrograms(t *testing.T) {
	s := newShop(t, "one")
	f := s.open()
	changed, err := f.Changed()
	require.NoError(t, err)
	require.False(t, changed)

	require.NoError(t, os.WriteFile(s.path, []byte("theirs"), 0o600))
	changed, err = f.Changed()
	require.NoError(t, err)
	require.True(t, changed)
	var ce *ChangedError
	_, err = f.Save([]byte("ours"), Options{})
	require.ErrorAs(t, err, &ce)
	require.Equal(t, ChangedError{Path: s.path}, *ce)
	require.False(t, IsMachine(err))
	require.Equal(t, "theirs", s.content())

	out, err := f.Save([]byte("ours"), Options{Overwrite: true})
	require.NoError(t, err)
	kept, err := os.ReadFile(out.Previous)
	require.NoError(t, err)
	require.Equal(t, "theirs", string(kept))
	require.Equal(t, "ours", s.content())

	require.NoError(t, os.Truncate(s.path, MaxBytes+1))
	changed, err = f.Changed()
	require.NoError(t, err)
	require.True(t, changed)
	_, err = f.Save([]byte("more"), Options{})
	require.ErrorAs(t, err, &ce)
	var se *SizeError
	_, err = f.Save([]byte("more"), Options{Overwrite: true})
	require.ErrorAs(t, err, &se, "what cannot be kept is not replaced")

	require.NoError(t, os.Remove(s.path))
	changed, err = f.Changed()
	require.NoError(t, err)
	require.True(t, changed)
	_, err = f.Save([]byte("more"), Options{})
	require.ErrorAs(t, err, &ce)
	require.True(t, ce.Missing)
	_, err = f.Save([]byte("more"), Options{Overwrite: true})
	require.NoError(t, err)
	require.Equal(t, "more", s.content())
}

// meddler changes the file just before it is renamed over.
type meddler struct {
	disk
	path    string
	meddled bool
}

func (m *meddler) OpenFolder(path string) (folder, error) {
	dir, err := m.disk.OpenFolder(path)
	if err == nil && path != filepath.Dir(m.path) && !m.meddled { // the folder of versions: the save is half way
		m.meddled = true
		err = os.WriteFile(m.path, []byte("theirs"), 0o600)
	}
	return dir, err
}

func TestSaveNoticesAChangeHalfWay(t *testing.T) {
	s := newShop(t, "one")
	f, _, err := s.env(&meddler{path: s.path}).open(s.path)
	require.NoError(t, err)
	_, err = f.Save([]byte("two"), Options{Overwrite: true})
	var ce *ChangedError
	require.ErrorAs(t, err, &ce)
	require.Equal(t, "theirs", s.content())
	require.Equal(t, []string{"cart.yaml"}, s.names())
}

func TestSaveAsksFirst(t *testing.T) {
	t.Run("read-only", func(t *testing.T) {
		s := newShop(t, "one")
		require.NoError(t, os.Chmod(s.path, 0o444))
		f := s.open()
		_, err := f.Save([]byte("two"), Options{})
		var re *ReadOnlyError
		require.ErrorAs(t, err, &re)
		require.Equal(t, "one", s.content())
		_, err = f.Save([]byte("two"), Options{ReadOnly: true})
		require.NoError(t, err)
		require.Equal(t, "two", s.content())
	})
	t.Run("hard link", func(t *testing.T) {
		s := newShop(t, "one")
		other := filepath.Join(filepath.Dir(s.path), "other")
		require.NoError(t, os.Link(s.path, other))
		f := s.open()
		_, err := f.Save([]byte("two"), Options{})
		var le *LinksError
		require.ErrorAs(t, err, &le)
		require.Equal(t, 2, le.Names)
		_, err = f.Save([]byte("two"), Options{Links: true})
		require.NoError(t, err)
		require.Equal(t, "two", s.content())
		data, err := os.ReadFile(other)
		require.NoError(t, err)
		require.Equal(t, "one", string(data))
	})
}

func TestSaveFollowsASymbolicLink(t *testing.T) {
	s := newShop(t, "one")
	link := filepath.Join(t.TempDir(), "link.yaml")
	require.NoError(t, os.Symlink(s.path, link))
	f, _, err := s.env(disk{}).open(link)
	require.NoError(t, err)
	require.Equal(t, s.path, f.Path())
	_, err = f.Save([]byte("two"), Options{})
	require.NoError(t, err)
	require.Equal(t, "two", s.content())
	info, err := os.Lstat(link)
	require.NoError(t, err)
	require.NotZero(t, info.Mode()&fs.ModeSymlink)
}

func TestOpenRefuses(t *testing.T) {
	s := newShop(t, strings.Repeat("x", MaxBytes))
	_, data, err := s.env(disk{}).open(s.path)
	require.NoError(t, err)
	require.Len(t, data, MaxBytes)
	require.NoError(t, os.WriteFile(s.path, []byte(strings.Repeat("x", MaxBytes+1)), 0o600))
	loop := filepath.Join(filepath.Dir(s.path), "loop")
	require.NoError(t, os.Symlink(loop, loop))

	tests := []struct {
		name, path, want string
	}{
		{"too large", s.path, "is larger than 2097152 bytes"},
		{"folder", filepath.Dir(s.path), "is a folder"},
		{"missing", s.path + "x", "no such file"},
		{"missing folder", filepath.Join(s.path+"x", "y"), "no such file"},
		{"below a file", filepath.Join(s.path, "y"), "not a directory"},
		{"links in a circle", loop, loop + ": EvalSymlinks: too many links"},
		{"the topmost folder", filepath.VolumeName(s.path) + string(filepath.Separator), "is a folder"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, _, err := s.env(disk{}).open(tt.path)
			require.ErrorContains(t, err, tt.want)
			require.False(t, IsMachine(err))
		})
	}
}

func TestSaveRefusesTooMuch(t *testing.T) {
	s := newShop(t, "one")
	var se *SizeError
	_, err := s.open().Save(make([]byte, MaxBytes+1), Options{})
	require.ErrorAs(t, err, &se)
	_, _, err = s.env(disk{}).saveAs(s.path+"2", make([]byte, MaxBytes+1), false)
	require.ErrorAs(t, err, &se)
	require.Equal(t, []string{"cart.yaml"}, s.names())
}

func TestSaveAs(t *testing.T) {
	s := newShop(t, "one")
	e := s.env(disk{})
	f, out, err := e.saveAs(s.path+"2", []byte("new"), false)
	require.NoError(t, err)
	require.Empty(t, out.Warnings)
	require.Equal(t, []string{"cart.yaml", "cart.yaml2"}, s.names())
	_, err = f.Save([]byte("newer"), Options{})
	require.NoError(t, err)

	_, _, err = e.saveAs(s.path, []byte("new"), false)
	var ee *ExistsError
	require.ErrorAs(t, err, &ee)
	require.ErrorIs(t, err, fs.ErrExist)
	require.False(t, IsMachine(err))
	require.Equal(t, "one", s.content())

	_, out, err = e.saveAs(s.path, []byte("new"), true)
	require.NoError(t, err)
	require.Equal(t, "new", s.content())
	kept, err := os.ReadFile(out.Previous)
	require.NoError(t, err)
	require.Equal(t, "one", string(kept))

	dangling := filepath.Join(filepath.Dir(s.path), "dangling")
	require.NoError(t, os.Symlink("nowhere", dangling))
	_, _, err = e.saveAs(dangling, []byte("new"), true)
	require.ErrorAs(t, err, &ee)
	_, _, err = e.saveAs(filepath.Join(s.path+"x", "y"), []byte("new"), false)
	require.ErrorIs(t, err, fs.ErrNotExist)
	require.Equal(t, []string{"cart.yaml", "cart.yaml2", "dangling"}, s.names())
}

func TestTempNames(t *testing.T) {
	require.Equal(t, ".cart.yaml.ABCDEFGH.tmp", tempName("cart.yaml", "ABCDEFGH"))
	long := strings.Repeat("é", 127)
	require.LessOrEqual(t, len(tempName(long, "ABCDEFGH")), 255)
	require.True(t, isTempOf(long, tempName(long, "ABCDEFGH")))
	require.False(t, isTempOf("cart.yaml", ".cart.yaml.bak.tmp"))

	s := newShop(t, "one")
	left := filepath.Join(filepath.Dir(s.path), ".cart.yaml.ABCDEFGH.tmp")
	require.NoError(t, os.WriteFile(left, nil, 0o600))
	paths, err := s.open().Leftovers()
	require.NoError(t, err)
	require.Equal(t, []string{left}, paths)
}

func TestStateFolder(t *testing.T) {
	t.Setenv("XDG_STATE_HOME", "/state")
	dir, err := StateFolder()
	require.NoError(t, err)
	require.Equal(t, filepath.FromSlash("/state/lugbook"), dir)
	t.Setenv("XDG_STATE_HOME", "relative")
	t.Setenv("XDG_CONFIG_HOME", "/config")
	t.Setenv("HOME", "/home/x")
	settings, err := os.UserConfigDir()
	require.NoError(t, err)
	dir, err = StateFolder()
	require.NoError(t, err)
	require.Equal(t, filepath.Join(settings, "lugbook"), dir)
}

// TestStateFolderIsNeverRelative: versions of a file belong in one place, wherever the
// program is started.
func TestStateFolderIsNeverRelative(t *testing.T) {
	t.Setenv("XDG_STATE_HOME", "")
	t.Setenv("XDG_CONFIG_HOME", "")
	for _, name := range []string{"HOME", "AppData", "home"} {
		t.Setenv(name, "relative")
	}
	_, err := StateFolder()
	require.Error(t, err)
}

func TestPackageFunctions(t *testing.T) {
	s := newShop(t, "one")
	t.Setenv("XDG_STATE_HOME", filepath.Dir(s.versions))
	f, data, err := Open(s.path)
	require.NoError(t, err)
	require.Equal(t, "one", string(data))
	out, err := f.Save([]byte("two"), Options{})
	require.NoError(t, err)
	require.Contains(t, out.Previous, filepath.Join("lugbook", "versions"))
	_, _, err = SaveAs(s.path+"2", []byte("new"), false)
	require.NoError(t, err)
}

func TestIsMachine(t *testing.T) {
	wrap := func(err error) error {
		return fmt.Errorf("save: %w", &LeftoverError{Path: "p", Err: &fs.PathError{Op: "write", Path: "x", Err: err}})
	}
	for _, err := range []error{syscall.ENOSPC, syscall.EIO, syscall.EACCES, syscall.EPERM, syscall.EROFS, syscall.EDQUOT, errReadBack, io.ErrShortWrite} {
		require.True(t, IsMachine(wrap(err)), err)
	}
	for _, err := range []error{syscall.ENOENT, syscall.EEXIST, syscall.ENOTDIR, syscall.EISDIR, syscall.ENAMETOOLONG,
		&ChangedError{}, &ReadOnlyError{}, &LinksError{}, &NotRegularError{}, &SizeError{}, &ExistsError{}} {
		require.False(t, IsMachine(wrap(err)), err)
	}
	require.False(t, IsMachine(nil))
	require.False(t, errors.Is(&ExistsError{}, fs.ErrNotExist))
}
