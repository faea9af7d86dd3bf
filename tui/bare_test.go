package tui

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

func TestABareNumberHasTheUnitThatWasThere(t *testing.T) {
	for _, c := range []struct{ text, was, about, want string }{
		{"48", "", "nominal system voltage, such as 48 V", "48 V"},
		{"48", "36 V", "", "48 V"},
		{"0.5", "2 ft", "", "0.5 ft"},
		{"4", "6 AWG", "", "4 AWG"},
		{"2", "", "length, such as 30 in", "2"},
		{"48 A", "36 V", "", "48 A"},
		{"", "36 V", "", ""},
		{"7", "3", "", "7"},
		{"7", "red", "such as 48 V", "7"},
	} {
		require.Equal(t, c.want, withUnit(c.text, c.was, c.about), c)
	}
}

func TestTheSystemVoltageIsTypedWithoutItsUnit(t *testing.T) {
	r := recorded(t)
	r.press("J<down><down><enter>48<enter>")
	require.Equal(t, unit.V(48), r.d.job().System)
	r.press("<esc>/sol<enter>e" + strings.Repeat("<down>", 20) + "<enter>72; plate<enter>")
	rating, has := sheetOf(r, model.AsFound).Part("sol").Rating("voltage-rating")
	require.True(t, has)
	require.Equal(t, unit.V(72), must(rating.Value.Volt()))
	require.Equal(t, "plate", rating.Source)
}
