package tui

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/tui/theme"
)

// Whatever is done, undone and done again, a step of the history is shown by the drawing that
// was on the screen when it was shown last, to the cell.
func TestUndoBringsTheDrawingBack(t *testing.T) {
	entered := newRobot(t, Session{}, theme.NoEscapes, 80, 24)
	recordCart(entered)
	cart := entered.d.job()
	strokes := []string{"u", "u", "uu", "U", "UU", "U", "m<right><enter>", "m<down><down><enter>", "m<shift+right><up><enter>", "M", "abatt<enter><enter><enter>", "A", "d", "D", "o", "T",
		"<tab>", "<tab><tab><tab>", "/sol<enter>", "/w4<enter>", "w<right><enter>r4<enter>", "pplan<enter>", "1", "2", "hthe s<enter>", "C", "g.+<esc>", "/w2<enter>d"}
	rapid.Check(t, func(rt *rapid.T) {
		r := newRobot(rt, Session{Job: cart}, theme.NoEscapes, 120, 36)
		r.d.drawer = quickDrawing
		r.press("T")
		was := map[shot][]scene.Page{}
		shown := map[shot]string{}
		for range rapid.IntRange(4, 14).Draw(rt, "strokes") {
			keys := rapid.SampledFrom(strokes).Draw(rt, "keys")
			r.press(keys + "<esc><esc><esc>")
			if r.d.empty() {
				continue
			}
			require.Equal(rt, r.d.stamp(), r.d.work.pictureOf)
			is, p := r.d.shot(), r.d.work.picture
			if pages, seen := was[is]; seen && keys != "T" {
				require.Equal(rt, pages, p.drawing.Pages, "after %s", keys)
				require.Equal(rt, shown[is], p.grid.String(), "after %s", keys)
			}
			was[is], shown[is] = p.drawing.Pages, p.grid.String()
		}
	})
}

// quickDrawing draws afresh without taking the time for care.
func quickDrawing(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o diagram.Options) (*diagram.Drawing, error) {
	o.Quick = true
	return diagram.Draw(j, sheet, lib, o)
}

func TestTheAlbumIsBoundedAndKeepsWhatWasLookedAt(t *testing.T) {
	var a album
	sheet := func(n int) *diagram.Drawing {
		return &diagram.Drawing{Pages: []scene.Page{{Boxes: make([]scene.Box, n-1)}}}
	}
	jobs := make([]model.Job, 12)
	first := sheet(albumRoom / 10)
	a.keep(shot{job: &jobs[0]}, first)
	for i := 1; i < len(jobs); i++ {
		a.keep(shot{job: &jobs[i]}, sheet(albumRoom/10))
		require.True(t, first == a.find(shot{job: &jobs[0]}), "it was looked at")
		require.LessOrEqual(t, a.things, albumRoom)
	}
	require.Len(t, a.leaves, 10)
	require.Nil(t, a.find(shot{job: &jobs[1]}))
	a.keep(shot{job: &jobs[0]}, sheet(2*albumRoom))
	require.Len(t, a.leaves, 1, "the newest is kept however large it is")
	a.forget(shot{job: &jobs[0]})
	require.Zero(t, a.things)
	require.Nil(t, a.last(model.AsFound))
}

// A job is saved with how its sheets were drawn, and opened so.
func TestADrawingIsFoundAsItWasLeft(t *testing.T) {
	s, path := onDisk(t)
	r := newRobot(t, s, theme.NoEscapes, 120, 36)
	r.d.drawer = diagram.Draw
	r.press("zdash<enter>abatt<enter>dash<enter><enter>AAacont<enter>dash<enter><enter>m<right><down><down><enter>s")
	require.Contains(t, r.d.notice.text, "saved")
	require.False(t, r.d.unsaved())
	job := reopened(t, path)
	require.NotEmpty(t, job.Sheets[0].Drawn)
	again := newRobot(t, Session{Job: job, Library: s.Library}, theme.NoEscapes, 120, 36)
	again.d.album, again.d.work = album{}, work{}
	again.d.drawer = diagram.Draw
	again.press("<esc>")
	require.Equal(t, r.d.work.picture.drawing.Pages, again.d.work.picture.drawing.Pages)
}
