package diagram_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
)

// session is a job that is edited while its drawing is on the screen.
type session struct {
	*edit.History
	sheet   model.SheetName
	drawing *diagram.Drawing
}

func openCart(t *testing.T, name string, sheet model.SheetName) *session {
	t.Helper()
	data, err := cart.Read(name)
	require.NoError(t, err)
	d, problems := jobfile.Decode(name, data, part.Library())
	require.Empty(t, problems)
	s := &session{History: edit.NewHistory(d.Job, part.Library()), sheet: sheet}
	s.draw(t)
	return s
}

func (s *session) draw(t *testing.T) *scene.Page {
	t.Helper()
	d, err := diagram.Draw(s.Job(), s.sheet, part.Library(), diagram.Options{Quick: true, Previous: s.drawing})
	require.NoError(t, err)
	s.drawing = d
	require.Empty(t, scene.Check(&d.Pages[0]))
	return &d.Pages[0]
}

// do makes an edit and draws; the parts named may go anywhere. It requires that all others keep their order and
// returns how many of them did not keep their places.
func (s *session) do(t *testing.T, e edit.Edit, about ...string) (moved int) {
	t.Helper()
	require.NoError(t, s.Do(e))
	before := s.drawing.Pages[0].Boxes
	was := map[string]scene.Rect{}
	for _, b := range before {
		was[b.ID] = b.Rect
	}
	for _, id := range about {
		delete(was, id)
	}
	after := s.draw(t).Boxes
	for _, b := range after {
		old, stays := was[b.ID]
		if !stays {
			continue
		}
		if old.X != b.Rect.X || old.Y != b.Rect.Y {
			moved++
		}
		for _, o := range after {
			if r, stays := was[o.ID]; stays {
				require.False(t, r.X < old.X && o.Rect.X > b.Rect.X, "%s: %s was left of %s", e.Name(), o.ID, b.ID)
				require.False(t, r.Y < old.Y && o.Rect.Y > b.Rect.Y, "%s: %s was above %s", e.Name(), o.ID, b.ID)
			}
		}
	}
	return moved
}

func (s *session) corner(id model.PartID) scene.Point {
	for _, b := range s.drawing.Pages[0].Boxes {
		if b.ID == string(id) {
			return scene.Point{X: b.Rect.X, Y: b.Rect.Y}
		}
	}
	return scene.Point{}
}

// TestEditsOfACartLeaveItsDrawingInPlace adds a wire to a stud and a part to a zone, moves the part to another zone
// and to one that is new, renames it and takes both away again, on every sheet of every worked cart.
func TestEditsOfACartLeaveItsDrawingInPlace(t *testing.T) {
	names := cart.Names()
	if testing.Short() {
		names = names[:1]
	}
	for _, name := range names {
		for _, sheet := range []model.SheetName{model.AsFound, model.Plan} {
			t.Run(fmt.Sprint(name, " ", sheet), func(t *testing.T) {
				t.Parallel()
				s := openCart(t, name, sheet)
				parts := s.Job().Sheet(sheet).Parts
				stud := s.Job().Sheet(sheet).Wires[0].From.At
				home, away := s.Job().Sheet(sheet).Part(stud.Part).Zone, parts[len(parts)-1].Zone
				corner := s.corner(stud.Part)

				s.do(t, edit.AddWire{Sheet: sheet, Wire: model.Wire{ID: "zz1", From: model.End{At: stud}, To: model.LooseEnd(model.Cut)}})
				require.Equal(t, corner, s.corner(stud.Part), "a box grows where it is")
				s.do(t, edit.AddPart{Sheet: sheet, Part: model.Part{ID: "zzp", Kind: "lead-battery-6v", Zone: home}})
				s.do(t, edit.ReEnd{Sheet: sheet, ID: "zz1", Side: edit.To, End: model.End{At: model.TerminalRef{Part: "zzp", Name: "+"}}})
				s.do(t, edit.SetPart{Sheet: sheet, ID: "zzp", Field: "zone", Text: string(away)}, "zzp")
				require.NoError(t, s.Do(edit.AddZone{Zone: model.Zone{ID: "zzz", Name: "glove box"}}))
				s.do(t, edit.SetPart{Sheet: sheet, ID: "zzp", Field: "zone", Text: "zzz"}, "zzp")
				corner = s.corner("zzp")
				require.Zero(t, s.do(t, edit.RenamePart{From: "zzp", To: "zzq"}))
				require.Equal(t, corner, s.corner("zzq"), "another name is no reason to move")
				require.Zero(t, s.do(t, edit.RemoveWire{Sheet: sheet, ID: "zz1"}))
				require.Zero(t, s.do(t, edit.RemovePart{Sheet: sheet, ID: "zzq"}))
			})
		}
	}
}
