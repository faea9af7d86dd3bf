package scenetest

import (
	"strconv"

	"example.com/lugbook/diagram/scene"
)

// CartState is the cart of [Cart] in drive: contactor closed, motor turning, charger off.
func CartState() scene.State {
	live := func(amps float64, figure string) scene.Flow {
		return scene.Flow{Energy: scene.Live, Amps: amps, Figure: figure}
	}
	back := func(amps float64, figure string) scene.Flow {
		return scene.Flow{Energy: scene.Return, Amps: amps, Figure: figure}
	}
	dead, unjudged := scene.Flow{Energy: scene.Dead}, scene.Flow{Energy: scene.Unjudged}
	return scene.State{
		Name: "drive-forward", About: "key on, forward, pedal down",
		Wires: map[string]scene.Flow{
			"w1": live(187, "187 A"), "w2": live(186, "186 A"), "w3": live(186, "186 A"), "w4": back(-187, "187 A"), "w5": live(0.6, "600 mA"),
			"w6": live(0.6, "600 mA"), "w7": live(0, "2.4 V"), "w8": live(-0.4, "400 mA"), "w9": live(0.4, "400 mA"), "w10": back(0, ""),
			"w11": live(0.6, "600 mA"), "w12": dead, "w13": dead, "w14": unjudged, "w15": unjudged, "w16": unjudged, "w17": live(-186, "186 A"),
			"w18": live(12, "12 A"), "w19": live(-12, "12 A"),
		},
		Parts: map[string]scene.Working{
			"pack": {Word: "ON", Active: true}, "sol": {Word: "CLOSED", Active: true}, "ctrl": {Word: "ON", Active: true}, "key": {Word: "CLOSED", Active: true},
			"ped": {Word: "DOWN", Active: true}, "chg": {Word: "off"},
		},
		Remarks: []string{"Mains wires are not judged."},
	}
}

// RandomState makes a state of a page from random choices, as [Random] does a page.
func RandomState(p *scene.Page, pick func(n int) int) scene.State {
	s := scene.State{Name: "random", Wires: map[string]scene.Flow{}, Parts: map[string]scene.Working{}}
	for _, w := range p.Wires {
		f := scene.Flow{Energy: scene.Energy(1 + pick(4))}
		if amps := pick(9); f.Energy != scene.Unjudged && amps > 3 {
			f.Amps = float64(amps * (1 - 2*pick(2)))
			f.Figure = strconv.Itoa(amps) + []string{" A", "00 A", " mA"}[pick(3)]
		}
		s.Wires[w.ID] = f
	}
	words := []string{"", "open", "CLOSED", "FORWARD"}
	for _, b := range p.Boxes {
		n := pick(len(words))
		s.Parts[b.ID] = scene.Working{Word: words[n], Active: n > 1}
	}
	return s
}
