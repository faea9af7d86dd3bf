package motion

import "math"

// Gravity is standard gravity in m/s2, ISO 80000-3.
const Gravity = 9.80665

// Vehicle is what must be known of one that moves.
type Vehicle struct {
	Mass       float64 // kg, with load and people
	Rolling    float64 // coefficient of rolling resistance, see Surfaces
	Efficiency float64 // of the drive from battery to wheel, above 0 and up to 1
}

// Task is one thing that it does.
type Task struct {
	Grade        float64 // rise over run; negative downhill
	Speed        float64 // m/s
	Acceleration float64 // m/s2 of the vehicle; its turning parts count as mass by TurningShare
}

// TurningShare is how much more mass a vehicle seems to have when it speeds up, for its
// wheels and rotor turn faster too: 10 % is usual in worked examples of traction.
const TurningShare = 0.1

// Force is the force at the wheels in newtons: the grade's share of the weight, rolling
// resistance on what presses on the road, and what speeds the mass up. Negative if the
// vehicle must be held back. The air does not count at the speeds of carts.
func (v Vehicle) Force(t Task) float64 {
	slope := math.Atan(t.Grade)
	return v.Mass * (Gravity*(math.Sin(slope)+v.Rolling*math.Cos(slope)) + (1+TurningShare)*t.Acceleration)
}

// Watts is what the battery gives for a task: the power at the wheels over the drive's
// efficiency. Negative is what a drive that brakes gives back, the power times the
// efficiency.
func (v Vehicle) Watts(t Task) float64 {
	power := v.Force(t) * t.Speed
	if power < 0 {
		return power * v.Efficiency
	}
	return power / v.Efficiency
}

// WattHoursPerKM is the energy from the battery for a kilometre of road on a grade, or
// what comes back if it is negative.
func (v Vehicle) WattHoursPerKM(grade float64) float64 {
	const joulesPerWattHour = 3600
	return v.Watts(Task{Grade: grade, Speed: 1}) * 1000 / joulesPerWattHour
}

// BatteryAmps is the current that a pack of an open voltage behind a resistance in ohms
// gives to a drive that takes a power in watts, I = (V - sqrt(V^2 - 4 R P)) / 2R: the
// one of two solutions at which the voltage holds up. Negative power charges. It reports
// false if the pack cannot give that power: the most is V^2 / 4R.
func BatteryAmps(volts, ohms, watts float64) (float64, bool) {
	root := volts*volts - 4*ohms*watts
	if root < 0 || volts <= 0 {
		return 0, false
	}
	return 2 * watts / (volts + math.Sqrt(root)), true
}
