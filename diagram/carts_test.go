package diagram_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
)

// TestWorkedCartsAreDrawnWithoutFault draws every sheet of every worked cart, in pages of
// 120 columns and on one page, and finds every wire with a label that names it.
func TestWorkedCartsAreDrawnWithoutFault(t *testing.T) {
	names := cart.Names()
	if testing.Short() {
		names = names[:1]
	}
	for _, name := range names {
		data, err := cart.Read(name)
		require.NoError(t, err)
		d, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		for _, s := range d.Job.Sheets {
			for _, o := range []diagram.Options{{Quick: true}, {Width: 120, Height: 150, Quick: true}} {
				if testing.Short() && o.Width > 0 {
					continue
				}
				t.Run(fmt.Sprintf("%s %s %d", name, s.Name, o.Width), func(t *testing.T) {
					t.Parallel()
					drawing, err := diagram.Draw(d.Job, s.Name, part.Library(), o)
					require.NoError(t, err)
					for i := range drawing.Pages {
						p := &drawing.Pages[i]
						require.Empty(t, scene.Check(p))
						if o.Width > 0 {
							require.LessOrEqual(t, p.W, o.Width)
						}
						for _, w := range p.Wires {
							require.Contains(t, w.Label.Text, w.ID)
						}
					}
				})
			}
		}
	}
}
