package main

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/heat"
	"example.com/lugbook/model/motion"
	"example.com/lugbook/model/opening"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

// sizeAsk is what the flags of the size command say, as a person wrote it.
type sizeAsk struct {
	current, duty, length, system, class, ambient, drop, margin, fuse, fault string
	bundle                                                                   int
	studs                                                                    []string
	sheathed                                                                 bool

	mass, grade, speed, reach, rolling, surface, efficiency, resistance string

	sheet, wire              string
	metric, awg, json, drops bool
}

// The flags that describe a load, a vehicle and a circuit without a job.
var (
	motionFlags  = []string{"grade", "speed", "reach", "rolling", "surface", "drive-efficiency", "pack-resistance"}
	loadFlags    = append([]string{"current", "duty", "mass"}, motionFlags...)
	circuitFlags = []string{"length", "system", "class", "fuse", "fault", "bundle", "stud", "sheathed"}
)

// define declares the flags.
func (a *sizeAsk) define(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringVar(&a.current, "current", "", "current that flows all the time, such as 250A")
	f.StringVar(&a.duty, "duty", "", "currents with their times that repeat, such as \"300 A 30 s, 90 A 1 h\"")
	f.StringVar(&a.length, "length", "", "length of conductor out and back together, such as 3m or 10ft")
	f.StringVar(&a.system, "system", "", "nominal voltage, such as 48V or 51.2V")
	f.StringVar(&a.class, "class", "", "temperature of the insulation in C; without it 105")
	f.StringVar(&a.ambient, "ambient", "", "temperature in C where the conductor lies; without it 30")
	f.StringVar(&a.drop, "drop", "", "most that may drop, in % or V; without it 3%. Twice that for up to two minutes")
	f.IntVar(&a.bundle, "bundle", 1, "conductors that carry current in the same bundle")
	f.StringVar(&a.margin, "margin", "", "what the fuse is rated above the lasting current; without it 25%")
	f.StringVar(&a.fuse, "fuse", "", "family of the fuse by the name of its gates, such as iec-60269-gg, to judge a short circuit")
	f.StringVar(&a.fault, "fault", "", "largest fault current, such as 4kA")
	f.StringSliceVar(&a.studs, "stud", nil, "stud that a lug goes on, such as M8 or 5/16in; may be given twice")
	f.BoolVar(&a.sheathed, "sheathed", false, "the conductor runs in a sheath with others")
	f.StringVar(&a.mass, "mass", "", "mass of the vehicle with its load, such as 1250kg or 2700lb, in place of a current")
	f.StringVar(&a.grade, "grade", "", "grade that it climbs, such as 10% or \"1 in 8\"")
	f.StringVar(&a.speed, "speed", "", "speed, such as 15km/h or 9mph")
	f.StringVar(&a.reach, "reach", "", "time in which it comes to that speed, such as 6s")
	f.StringVar(&a.rolling, "rolling", "", "coefficient of rolling resistance, such as 0.02")
	f.StringVar(&a.surface, "surface", "", "surface in place of a coefficient: "+strings.Join(surfaceNames(), ", "))
	f.StringVar(&a.efficiency, "drive-efficiency", "", "from battery to wheel, such as 70%")
	f.StringVar(&a.resistance, "pack-resistance", "", "of pack and cables, such as 15mohm")
	f.StringVar(&a.sheet, "sheet", "", "sheet of the job: as-found, plan or as-built; without it the latest")
	f.StringVar(&a.wire, "wire", "", "only this wire of the job, with all figures")
	f.BoolVar(&a.drops, "drops", false, "what each load of the job loses on its way, the greatest losses first")
	f.BoolVar(&a.metric, "metric", false, "pick from mm2")
	f.BoolVar(&a.awg, "awg", false, "pick from AWG")
	f.BoolVar(&a.json, "json", false, "print one JSON object")
}

func surfaceNames() []string {
	var names []string
	for _, s := range motion.Surfaces() {
		names = append(names, s.Name)
	}
	return names
}

// series lists what to pick from: both unless one was asked for.
func (a sizeAsk) series() []size.Series {
	switch {
	case a.metric && !a.awg:
		return []size.Series{size.Metric}
	case a.awg && !a.metric:
		return []size.Series{size.American}
	}
	return []size.Series{size.American, size.Metric}
}

// options is what the flags say about a job.
func (a sizeAsk) options() (size.Options, error) {
	var o size.Options
	if a.metric != a.awg {
		o.Series = a.series()[0]
	}
	r := size.Requirement{Volts: 1}
	err := a.limits(&r)
	if strings.ContainsAny(a.drop, "vV") {
		err = errors.New("--drop of a job is a share of each circuit's voltage; write it as 3%")
	}
	o.Ambient, o.Drop, o.Margin = r.Ambient, r.Drop, r.Margin
	return o, err
}

// reading is one flag and what it sets.
type reading struct {
	name, text string
	set        func(text string) error
}

// read sets what was stated, and names the flag whose text is not understood.
func read(list []reading) error {
	for _, r := range list {
		if r.text == "" {
			continue
		}
		if err := r.set(r.text); err != nil {
			return fmt.Errorf("--%s: %w", r.name, err)
		}
	}
	return nil
}

// in makes a setter of a parser and the number that it gives.
func in[T any](to *float64, parse func(string) (T, error), value func(T) float64) func(string) error {
	return func(text string) error {
		q, err := parse(text)
		if err == nil {
			*to = value(q)
		}
		return err
	}
}

// limits reads the flags that a job has too. An ambient below that of the ampacity table
// earns nothing.
func (a sizeAsk) limits(r *size.Requirement) error {
	err := read([]reading{
		{"ambient", celsius(a.ambient), in(&r.Ambient, unit.ParseCelsius, unit.Celsius.Degrees)},
		{"margin", a.margin, in(&r.Margin, unit.ParsePercent, unit.Percent.Fraction)},
		{"drop", a.drop, func(text string) error { return dropOf(text, r) }},
	})
	switch {
	case err != nil:
		return err
	case a.margin != "" && r.Margin <= 0:
		return errors.New("--margin lies above 0 %: a fuse at its rating opens in a warm place")
	case a.drop != "" && r.Drop <= 0:
		return errors.New("--drop lies above 0: every conductor drops something")
	case a.ambient != "":
		r.Ambient = max(r.Ambient, conductor.TableAmbient)
	}
	return nil
}

// requirement is what the flags ask for, with a line for each thing that was worked out.
func (a sizeAsk) requirement() (r size.Requirement, told []string, err error) {
	r.Bundle, r.Sheathed = a.bundle, a.sheathed
	err = read([]reading{
		{"current", a.current, in(&r.Continuous, unit.ParseAmpere, unit.Ampere.Amperes)},
		{"duty", a.duty, func(text string) (err error) {
			r.Duty, err = heat.ParseDuty(text)
			return err
		}},
		{"length", a.length, in(&r.Loop, unit.ParseLength, unit.Length.Metres)},
		{"system", a.system, in(&r.Volts, unit.ParseVolt, unit.Volt.Volts)},
		{"class", celsius(a.class), in(&r.Insulation, unit.ParseCelsius, unit.Celsius.Degrees)},
		{"fault", a.fault, in(&r.Fault, unit.ParseAmpere, unit.Ampere.Amperes)},
		{"fuse", a.fuse, func(text string) error { return familyOf(text, &r) }},
	})
	for _, text := range a.studs {
		stud, bad := unit.ParseStud(text)
		if bad != nil && err == nil {
			err = fmt.Errorf("--stud: %w", bad)
		}
		r.Studs = append(r.Studs, stud)
	}
	if err == nil {
		err = a.limits(&r)
	}
	if err == nil && a.mass != "" {
		told, err = a.moves(&r)
	}
	return r, told, err
}

// celsius lets a bare number be degrees Celsius.
func celsius(text string) string {
	if bareNumber.MatchString(text) {
		return text + " C"
	}
	return text
}

var bareNumber = regexp.MustCompile(`^\s*-?[0-9]+(\.[0-9]+)?\s*$`)

// dropOf reads a drop in per cent, or in volts of the system's.
func dropOf(text string, r *size.Requirement) error {
	q, err := unit.ParseAny(text)
	if err != nil {
		return err
	}
	if share, ok := q.Percent(); ok {
		r.Drop = share.Fraction()
		return nil
	}
	volts, ok := q.Volt()
	switch {
	case !ok:
		return fmt.Errorf("%q is not a drop: expected one such as 3%% or 1.4 V", text)
	case r.Volts <= 0:
		return errors.New("a drop in volts needs --system")
	}
	r.Drop = volts.Volts() / r.Volts
	return nil
}

// familyOf finds a family of fuses.
func familyOf(name string, r *size.Requirement) error {
	gates, ok := opening.Find(name)
	if !ok {
		var names []string
		for _, g := range opening.All() {
			names = append(names, g.Name)
		}
		return fmt.Errorf("no family %q; there are %s", name, strings.Join(names, ", "))
	}
	r.Opening = gates
	return nil
}

// number reads a plain number.
func number(text string) (float64, error) {
	n, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil || !(n >= 0 && n < 1) {
		return 0, fmt.Errorf("%q is not a coefficient: expected a number such as 0.02", text)
	}
	return n, nil
}
