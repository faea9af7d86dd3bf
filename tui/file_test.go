package tui

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/export"
	"example.com/lugbook/model"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/store"
	"example.com/lugbook/tui/theme"
)

// onDisk is a session on a new job file.
func onDisk(t *testing.T) (Session, string) {
	t.Helper()
	t.Setenv("XDG_STATE_HOME", t.TempDir())
	path := filepath.Join(t.TempDir(), "cart.yaml")
	var fresh *jobfile.Decoded
	data, err := fresh.Encode(&model.Job{Version: 1, Title: "orchard cart", Sheets: []model.Sheet{{Name: model.AsFound}}})
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, data, 0o644))
	file, err := jobfile.Open(path, part.Library())
	require.NoError(t, err)
	return ForFile(file, part.Library()), path
}

func reopened(t *testing.T, path string) *model.Job {
	t.Helper()
	file, err := jobfile.Open(path, part.Library())
	require.NoError(t, err)
	return file.Job()
}

func TestSaving(t *testing.T) {
	s, path := onDisk(t)
	r := newRobot(t, s, theme.NoEscapes, 80, 24)
	r.press("s")
	require.Contains(t, r.d.notice.text, "nothing has changed")
	r.press("zdash<enter>")
	require.True(t, r.d.unsaved())
	require.Contains(t, r.d.View(), "NOT SAVED")
	r.press("s")
	require.False(t, r.d.unsaved())
	require.Equal(t, "saved", r.d.notice.text)
	require.Equal(t, []model.Zone{{ID: "dash"}}, reopened(t, path).Zones)
	r.press("u")
	require.True(t, r.d.unsaved(), "undo goes past what was saved")
	r.press("U")
	require.False(t, r.d.unsaved(), "and back to it")
}

func TestAFileThatAnotherProgramChanged(t *testing.T) {
	s, path := onDisk(t)
	r := newRobot(t, s, theme.NoEscapes, 80, 24)
	r.press("zdash<enter>")
	other, err := os.ReadFile(path)
	require.NoError(t, err)
	other = append(other, "# by another hand\n"...)
	require.NoError(t, os.WriteFile(path, other, 0o644))

	r.press("s")
	require.Equal(t, inList, r.d.here(), "a way out is offered")
	r.press("<enter>") // keep editing
	require.True(t, r.d.unsaved())
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, other, now)

	second := filepath.Join(filepath.Dir(path), "second.yaml")
	r.press("sunder<enter>")
	require.Equal(t, inField, r.d.here())
	r.press(strings.Repeat("<backspace>", len(path)) + second + "<enter>")
	require.False(t, r.d.unsaved())
	require.Len(t, reopened(t, second).Zones, 1)
	r.press("zinlet<enter>s")
	require.Len(t, reopened(t, second).Zones, 2, "the new file is the job's file from now on")

	r.press("zrear<enter>S" + strings.Repeat("<backspace>", len(second)) + path + "<enter>")
	require.Equal(t, inList, r.d.here(), "a file that is there is not replaced unasked")
	r.press("replace<enter>")
	require.Len(t, reopened(t, path).Zones, 3)
	_, kept, said := strings.Cut(r.d.notice.text, "the text before is kept in ")
	require.True(t, said, r.d.notice.text)
	before, err := os.ReadFile(kept)
	require.NoError(t, err)
	require.Equal(t, other, before)
}

func TestFailingSavesLoseNothing(t *testing.T) {
	for _, failure := range []error{errors.New("disk \x1b[2J full"), &store.ReadOnlyError{Path: "x"}, &store.LinksError{Path: "x", Names: 2}} {
		fail := true
		r := newRobot(t, Session{Save: func(*model.Job, store.Options) (store.Outcome, error) {
			if fail {
				return store.Outcome{}, failure
			}
			return store.Outcome{Assurance: store.Doubtful}, nil
		}}, theme.NoEscapes, 80, 24)
		r.press("zdash<enter>q<enter>") // save and quit
		require.False(t, r.quit, "a save that failed does not quit")
		require.True(t, r.d.unsaved())
		require.NotContains(t, r.d.View(), "\x1b")
		fail = false
		r.press("<esc>s")
		require.Contains(t, r.d.notice.text, store.Doubtful.String())
	}
}

func TestQuitAsksOnlyIfSomethingIsNotSaved(t *testing.T) {
	s, _ := onDisk(t)
	r := newRobot(t, s, theme.NoEscapes, 80, 24)
	r.press("q")
	require.True(t, r.quit)

	for answer, quits := range map[string]bool{"q<enter>": true, "qstay<enter>": false, "qdiscard<enter>": true, "q<esc>": false, "<ctrl+c><enter>": true} {
		s, path := onDisk(t)
		r = newRobot(t, s, theme.NoEscapes, 80, 24)
		r.press("zdash<enter>" + answer)
		require.Equal(t, quits, r.quit, answer)
		saved := len(reopened(t, path).Zones) == 1
		require.Equal(t, strings.HasPrefix(answer, "q<enter>") || strings.HasPrefix(answer, "<ctrl+c>"), saved, answer)
	}

	r = newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	r.press("zdash<enter>")
	for range 5 {
		r.press("<esc>")
	}
	require.False(t, r.quit, "Esc never quits")
}

func TestExportsAreWrittenBesideTheJob(t *testing.T) {
	s, path := onDisk(t)
	r := newRobot(t, s, theme.NoEscapes, 80, 24)
	r.press("x")
	require.Contains(t, r.d.notice.text, "nothing is on this sheet")
	r.press("abatt<enter><enter><enter>")
	for _, f := range export.All {
		r.press("x" + f.Name + "<enter>")
		require.Contains(t, r.d.notice.text, "written: ")
		_, err := os.Stat(strings.TrimSuffix(path, ".yaml") + "-as-found" + f.Ext)
		require.NoError(t, err)
	}
}

func TestALostTerminalLeavesTheWorkBeside(t *testing.T) {
	s, path := onDisk(t)
	r := newRobot(t, s, theme.NoEscapes, 80, 24)
	r.d.rescue()
	rescued := strings.TrimSuffix(path, ".yaml") + "-rescued.yaml"
	require.NoFileExists(t, rescued, "everything is saved")
	r.press("zdash<enter>")
	r.d.rescue()
	require.Len(t, reopened(t, rescued).Zones, 1)

	file, err := jobfile.Open(path, part.Library())
	require.NoError(t, err)
	r = newRobot(t, ForFile(file, part.Library()), theme.NoEscapes, 80, 24)
	require.Contains(t, r.d.View(), "cart-rescued.yaml holds unsaved work of a lost terminal")
	r.press("q")
	require.True(t, r.quit, "the notice is in nobody's way")
	require.NoError(t, os.Remove(rescued))
	require.Empty(t, ForFile(file, part.Library()).Notice)
	require.Empty(t, reopened(t, path).Zones)
}

// A drawing or a check that is late is dropped; the newest one is shown in the end.
func TestStaleResultsAreDropped(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	r.press("abatt<enter><enter><enter>")
	old := r.d.work.picture
	_, first := r.d.Update(keyMsg("A")) // b2, nothing is computed yet
	require.Same(t, old, r.d.work.picture, "the old drawing stays meanwhile")
	_, second := r.d.Update(keyMsg("A")) // b3
	require.NotNil(t, first)
	r.run(first) // late
	r.run(second)
	require.Equal(t, r.d.stamp(), r.d.work.pictureOf)
	_, drawn := r.d.work.picture.place(ofPart("b3"))
	require.True(t, drawn)
	r.send(drawnStale(r.d))
	_, drawn = r.d.work.picture.place(ofPart("b3"))
	require.True(t, drawn)
	r.send(checked{stamp: stamp{revision: 1, sheet: model.AsFound}, err: errors.New("late")})
	require.NotContains(t, r.d.notice.text, "late")
}

// drawnStale is a drawing of the sheet as it was one step before.
func drawnStale(d *desk) tea.Msg {
	drawing, err := plainDrawing(&model.Job{Sheets: []model.Sheet{{Name: model.AsFound}}}, model.AsFound, shelf, diagram.Options{})
	of := d.stamp()
	of.revision--
	return drawn{stamp: of, picture: newPicture(drawing, false), err: err}
}

// A drawing or a check that fails is said once, and not tried again until something changes.
func TestAFailingDrawingIsNotTriedForEver(t *testing.T) {
	r := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	tries := 0
	r.d.drawer = func(*model.Job, model.SheetName, *model.Catalogue, diagram.Options) (*diagram.Drawing, error) {
		tries++
		if tries == 2 {
			panic("beyond repair")
		}
		return nil, errors.New("no room for it")
	}
	r.press("abatt<enter><enter><enter>")
	require.Equal(t, 1, tries)
	require.Contains(t, r.d.View(), "no room for it")
	r.press("A")
	require.Equal(t, 2, tries)
	require.Contains(t, r.d.View(), "the drawing failed: beyond repair")
}

// A job that was just opened is drawn at once, and then once more with care; a sheet that
// is shown later keeps the places of the one before.
func TestTheFirstDrawingIsQuick(t *testing.T) {
	job := large(3)
	plan := job.Sheets[0].CloneAs(model.Plan)
	job.Sheets = append(job.Sheets, plan)
	d := newDesk(Session{Job: job, Library: shelf, Sheet: model.AsFound}, theme.New(theme.Dark, theme.Indexed))
	var asked []diagram.Options
	d.checker = plainCheck
	d.drawer = func(j *model.Job, s model.SheetName, lib *model.Catalogue, o diagram.Options) (*diagram.Drawing, error) {
		asked = append(asked, o)
		return plainDrawing(j, s, lib, o)
	}
	r := &robot{t: t, d: d}
	r.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	require.Len(t, asked, 2)
	require.True(t, asked[0].Quick)
	require.False(t, asked[1].Quick)
	r.press("2")
	require.Len(t, asked, 3)
	require.True(t, asked[2].Quick)
	require.NotNil(t, asked[2].Previous)
}
