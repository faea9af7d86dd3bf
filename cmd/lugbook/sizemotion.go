package main

import (
	"errors"
	"fmt"

	"example.com/lugbook/model/motion"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

// What stands for what the flags do not say of a vehicle. From memory.
const (
	usualRolling    = 0.02
	usualEfficiency = 0.70
	usualPackOhms   = 15e-3
)

// moves adds the current of a vehicle that does what the flags say, with a line that tells
// how it was found.
func (a sizeAsk) moves(r *size.Requirement) ([]string, error) {
	v := motion.Vehicle{}
	var task motion.Task
	ohms, seconds := 0.0, 0.0
	same := func(x float64) float64 { return x }
	err := read([]reading{
		{"mass", a.mass, in(&v.Mass, motion.ParseMass, same)},
		{"grade", a.grade, in(&task.Grade, motion.ParseGrade, same)},
		{"speed", a.speed, in(&task.Speed, motion.ParseSpeed, same)},
		{"reach", a.reach, in(&seconds, unit.ParseSecond, unit.Second.Seconds)},
		{"rolling", a.rolling, in(&v.Rolling, number, same)},
		{"surface", a.surface, func(name string) error { return surfaceOf(name, &v) }},
		{"drive-efficiency", a.efficiency, in(&v.Efficiency, unit.ParsePercent, unit.Percent.Fraction)},
		{"pack-resistance", a.resistance, in(&ohms, unit.ParseOhm, unit.Ohm.Ohms)},
	})
	switch {
	case err != nil:
		return nil, err
	case a.speed == "":
		return nil, errors.New("--mass needs --speed")
	case a.rolling != "" && a.surface != "":
		return nil, errors.New("give --rolling or --surface, not both")
	case a.efficiency != "" && !(v.Efficiency > 0 && v.Efficiency <= 1):
		return nil, errors.New("--drive-efficiency lies above 0 and up to 100 %")
	case r.Volts <= 0:
		return nil, errors.New("--mass needs --system, the nominal voltage")
	}
	for _, usual := range []struct {
		stated string
		to     *float64
		value  float64
		say    string
	}{
		{a.rolling + a.surface, &v.Rolling, usualRolling, "rolling resistance of 0.02, as on worn asphalt"},
		{a.efficiency, &v.Efficiency, usualEfficiency, "70 % from battery to wheel (from memory)"},
		{a.resistance, &ohms, usualPackOhms, "15 mohm of pack and cables (from memory)"},
	} {
		if usual.stated == "" {
			*usual.to = usual.value
			r.Assumed = append(r.Assumed, usual.say)
		}
	}
	if seconds > 0 {
		task.Acceleration = task.Speed / seconds
	}
	watts := v.Watts(task)
	amps, ok := motion.BatteryAmps(r.Volts, ohms, watts)
	if !ok {
		return nil, fmt.Errorf("a pack of %g V behind %g mohm cannot give %.0f W: at most %.0f W", r.Volts, ohms*1000, watts, r.Volts*r.Volts/(4*ohms))
	}
	if amps < 0 {
		amps = -amps
	}
	r.Continuous = max(r.Continuous, amps)
	return []string{fmt.Sprintf("%.0f kg, grade %.1f %%, %.1f km/h, rolling resistance %.3g: %.0f N at the wheels, %.0f W and %.0f A at the battery, %.0f Wh/km",
		v.Mass, task.Grade*100, task.Speed*3.6, v.Rolling, v.Force(task), watts, amps, v.WattHoursPerKM(task.Grade))}, nil
}

// surfaceOf takes the upper figure of a surface.
func surfaceOf(name string, v *motion.Vehicle) error {
	s, ok := motion.FindSurface(name)
	if !ok {
		return unknownName("surface", name, surfaceNames(), "lugbook size --help")
	}
	v.Rolling = s.Most
	return nil
}
