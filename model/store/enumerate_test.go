package store

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// plans lists every way to fail one of some calls: each error, without the work or after
// it, once or from then on, and the write that stops half way.
func plans(calls []string) []fault {
	var list []fault
	for i, call := range calls {
		at := i + 1
		if call == "write" {
			list = append(list, fault{at: at, short: true})
		}
		for _, err := range faultErrors {
			list = append(list, fault{at: at, err: err}, fault{at: at, err: err, done: true})
			if !errors.Is(err, fs.ErrNotExist) && !errors.Is(err, fs.ErrExist) { // no system says these of everything
				list = append(list, fault{at: at, err: err, after: true})
			}
		}
	}
	return list
}

func TestEveryFailureOfASave(t *testing.T) {
	const before, after = "what stood there before", "what is saved now, and longer"
	clean := &fault{}
	s := newShop(t, before)
	f, _, err := s.env(clean).open(s.path)
	require.NoError(t, err)
	clean.calls = nil
	_, err = f.Save([]byte(after), Options{})
	require.NoError(t, err)
	require.Equal(t, "open folder, lstat, read, create, write, chmod, sync, close, read, "+
		"make folders, open folder, names, create, write, sync, close, read, rename, sync folder, read, rename, sync folder", trace(clean))

	failed, saved := 0, 0
	s = newMemoryShop(t)
	for _, plan := range plans(clean.calls) {
		s.reset(before)
		f := s.open()
		f.env.sys = &plan
		out, err := f.Save([]byte(after), Options{})
		about := fmt.Sprintf("%+v\n%v", plan, err)

		content := s.content()
		require.Contains(t, []string{before, after}, content, about)
		if err == nil {
			saved++
			require.Equal(t, after, content, about)
			requireHonest(t, &plan, out, about)
		} else {
			failed++
			renamed := plan.done && plan.calls[plan.at-1] == "rename"
			require.True(t, content == before || renamed, about)
		}
		requireTidy(t, s, &plan, err, about)

		f.env.sys = &fault{} // the person tries again, on a healthy disk
		_, err = f.Save([]byte("third"), Options{})
		require.NoError(t, err, about)
		require.Equal(t, "third", s.content(), about)
	}
	require.Greater(t, failed, 300)
	require.Greater(t, saved, 300)
}

// requireHonest checks that a failed flush is told, and that a version that was not
// kept is.
func requireHonest(t *testing.T, plan *fault, out Outcome, about string) {
	t.Helper()
	first := slices.Index(plan.calls, "make folders")
	last := len(plan.calls) - 1
	switch at := plan.at - 1; {
	case plan.calls[at] == "sync" && at < first, at == last && cannotSync(plan.err):
		require.Equal(t, Unconfirmed, out.Assurance, about)
	case at == last:
		require.Equal(t, Doubtful, out.Assurance, about)
		require.NotEmpty(t, out.Warnings, about)
	case at >= first && at < last-2 && !strings.HasPrefix(plan.calls[at], "sync"):
		require.NotEmpty(t, out.Warnings, about)
	}
}

// requireTidy checks that nothing is left beside the file but what the error names.
func requireTidy(t *testing.T, s shop, plan *fault, err error, about string) {
	t.Helper()
	if plan.lies() {
		return
	}
	var left *LeftoverError
	errors.As(err, &left)
	for _, name := range s.names() {
		if name != filepath.Base(s.path) {
			require.NotNil(t, left, about)
			require.Equal(t, filepath.Join(filepath.Dir(s.path), name), left.Path, about)
		}
	}
}

func TestEveryFailureOfASaveAs(t *testing.T) {
	clean := &fault{}
	s := newShop(t, "old")
	_, _, err := s.env(clean).saveAs(s.path+"2", []byte("new"), false)
	require.NoError(t, err)
	s = newMemoryShop(t)
	for _, plan := range plans(clean.calls) {
		s.reset("old")
		other := s
		other.path += "2"
		_, out, err := s.env(&plan).saveAs(other.path, []byte("new"), false)
		about := fmt.Sprintf("%+v\n%v %v", plan, err, out)
		require.Equal(t, "old", s.content(), about)
		exists := slices.Contains(s.names(), filepath.Base(other.path))
		if exists {
			require.Equal(t, "new", other.content(), about)
		}
		require.True(t, err != nil || exists, about)
		var left *LeftoverError
		errors.As(err, &left)
		for _, name := range s.names() {
			if strings.HasSuffix(name, ".tmp") && !plan.lies() {
				require.True(t, left != nil || strings.Contains(strings.Join(out.Warnings, ""), name), about)
			}
		}
	}
}

func TestFailuresAreTheMachines(t *testing.T) {
	for _, failure := range faultErrors[:6] {
		s := newShop(t, "old")
		f := s.open()
		f.env.sys = &fault{at: 5, err: failure}
		_, err := f.Save([]byte("new"), Options{})
		require.ErrorIs(t, err, failure)
		require.True(t, IsMachine(err), failure)
		require.NotErrorIs(t, err, fs.ErrNotExist)
	}
}
