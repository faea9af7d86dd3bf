package tui

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestKindsThatTheWordsNameComeFirst(t *testing.T) {
	var all []choice
	for _, title := range []string{"Motor encoder, two channels", "Series motor controller", "AC motor, three phases", "Series motor", "Separately excited (sepex, shunt) motor"} {
		all = append(all, choice{text: title, thing: true})
	}
	shown := func(text string) []string {
		var out []string
		for _, c := range fitting(all, text) {
			out = append(out, c.text)
		}
		return out
	}
	require.Equal(t, []string{"AC motor, three phases", "Series motor", "Motor encoder, two channels", "Series motor controller", "Separately excited (sepex, shunt) motor"}, shown("Motor"))
	require.Equal(t, []string{"Series motor", "Series motor controller"}, shown("series motor"))
	require.Equal(t, []string{"Separately excited (sepex, shunt) motor"}, shown("separately excited"))
}
