package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/size"
)

// dropsJob tells what each load of a sheet loses. A load that loses more than the limit, a
// share of its circuit's voltage, is a fault.
func (c *cli) dropsJob(j *model.Job, sheet model.SheetName, survey *size.Survey, a sizeAsk, limit float64) error {
	drops := survey.Drops()
	var err error
	if a.json {
		err = c.printAsJSON(dropsJSON(j, sheet, drops, survey))
	} else {
		_, err = io.WriteString(c.out, dropsText(j, sheet, drops, survey, limit))
	}
	if err != nil {
		return err
	}
	if len(survey.Unsolved()) > 0 || slices.ContainsFunc(drops, func(d size.LoadDrop) bool { return d.Share > limit }) {
		return errFound
	}
	return nil
}

// worstPieces is how many pieces the text shows of each load.
const worstPieces = 3

func dropsText(j *model.Job, sheet model.SheetName, drops []size.LoadDrop, survey *size.Survey, limit float64) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, sheet %s: what is lost on the way to each load and back, in its worst state\n", clean.Line(j.Title), sheet)
	for _, d := range drops {
		mark := "  "
		if d.Share > limit {
			mark = "! "
		}
		fmt.Fprintf(&b, "\n%s%s (%s): %.2f V (%.1f %%) lost, %.2f V left, at %.2f A in %s\n", mark, d.Part, d.Of, d.Lost, d.Share*100, d.Volts, d.Amps, d.State)
		for i, p := range d.Pieces {
			if i == worstPieces {
				fmt.Fprintf(&b, "           %d more\n", len(d.Pieces)-i)
				break
			}
			fmt.Fprintf(&b, "           %.3f V  %6.2f W  %s%s\n", p.Volts, p.Watts(), p.What, assumedMark(p))
		}
	}
	leftOutText(&b, survey)
	fmt.Fprintf(&b, "\n! more than %.3g %%. Conductors at 20 C; * a size or length is assumed.\n%s", limit*100, sizeCaution)
	return b.String()
}

func assumedMark(p size.Piece) string {
	if p.Assumed {
		return " *"
	}
	return ""
}

// The shapes of the drops in JSON. Volts, amperes, watts.
type (
	sheetDropsJSON struct {
		Job     string          `json:"job"`
		Sheet   model.SheetName `json:"sheet"`
		Loads   []loadDropJSON  `json:"loads"`
		LeftOut []string        `json:"left_out"`
		Failed  []string        `json:"not_computed"`
		Caution string          `json:"caution"`
	}
	loadDropJSON struct {
		Part   model.PartID `json:"part"`
		Of     string       `json:"element"`
		State  string       `json:"state"`
		Amps   float64      `json:"amperes"`
		Left   float64      `json:"volts_left"`
		Lost   float64      `json:"volts_lost"`
		Share  float64      `json:"share"`
		Pieces []pieceJSON  `json:"pieces"`
	}
	pieceJSON struct {
		What    string  `json:"what"`
		Return  bool    `json:"on_the_way_back"`
		Amps    float64 `json:"amperes"`
		Volts   float64 `json:"volts"`
		Watts   float64 `json:"watts"`
		Assumed bool    `json:"assumed"`
	}
)

func dropsJSON(j *model.Job, sheet model.SheetName, drops []size.LoadDrop, survey *size.Survey) sheetDropsJSON {
	out := sheetDropsJSON{
		Job: j.Title, Sheet: sheet, Loads: []loadDropJSON{}, LeftOut: append([]string{}, survey.Skipped()...),
		Failed: append([]string{}, survey.Unsolved()...), Caution: strings.TrimSpace(sizeCaution),
	}
	for _, d := range drops {
		load := loadDropJSON{Part: d.Part, Of: d.Of, State: d.State, Amps: d.Amps, Left: d.Volts, Lost: d.Lost, Share: d.Share, Pieces: []pieceJSON{}}
		for _, p := range d.Pieces {
			load.Pieces = append(load.Pieces, pieceJSON{p.What, p.Return, p.Amps, p.Volts, p.Watts(), p.Assumed})
		}
		out.Loads = append(out.Loads, load)
	}
	return out
}
