package symbol

// W and H are the width and height of every symbol in units; Note is what a sheet
// that bears symbols must say.
const (
	W    = 28
	H    = 24
	Note = "symbols after IEC 60617 / IEEE 315"
)

// The contacts and actuators that switches are put together from. Blades pass
// through 14,8 and that of a change-over through 14,10, where an actuator begins.
const (
	makeContact  = "=8:20; L 8,12 20,4"
	breakContact = "=8:20; L 8,12 23,2; L 20,12 20,2"
	changeOver   = "L 0,12 8,12 23,7; L 28,4 20,4 20,8; L 28,20 20,20"
	centreOff    = "L 0,12 8,12 18,12; L 28,4 20,4; L 28,20 20,20"
	byPush       = "; H 14,8 14,2; L 11,2 11,0 17,0 17,2"
	byHand       = "; H 14,8 14,1; L 11,1 17,1"
	byTurn       = "; H 14,8 14,2; L 11,0 11,2 17,2 17,4"
	byKey        = "; H 14,8 14,4; C 14,2,2"
	byPedal      = "; H 14,8 14,2; L 10,0 14,2 18,2"
	byStop       = "; G 11,10 17,10 17,6"
	circle       = "=6:22; C 14,12,8; "
	converter    = "=4:24; R 4,2,20,20; L 4,22 24,2; "
)

// table lists the symbols by name. Strokes: =a:b leads on the axis from the left
// edge to a and from b to the right edge; L open line; G outline; F filled outline;
// R open box and B filled box (x, y, w, h); C open circle and D filled circle (x, y,
// r); A half circles from point to point, clockwise; H dashed line; T text (x, y, letters), centred. The core is the middle
// of the text rendering, in box-drawing and in ASCII letters; empty where no small
// rendering is honest.
var table = []struct{ name, title, strokes, core, ascii string }{
	{"battery", "battery", "=6:22; L 6,4 6,20; L 10,8 10,16; H 10,12 18,12; L 18,4 18,20; L 22,8 22,16; L 1,6 5,6; L 3,4 3,8", "", ""},
	{"cell", "cell", "=12:16; L 12,4 12,20; L 16,8 16,16; L 6,6 10,6; L 8,4 8,8", "", ""},
	{"fuse", "fuse", "R 6,8,16,8; L 0,12 28,12", "[───]", "[---]"},
	{"contact-no", "make contact", makeContact, "] [", "] ["},
	{"contact-nc", "break contact", breakContact, "]/[", "]/["},
	{"contact-co", "change-over contact", changeOver, "", ""},
	{"selector", "two-way contact, off in the middle", centreOff, "", ""},
	{"contactor", "contactor contact", makeContact + "; A 20,12 20,8", "]K[", "]K["},
	{"solenoid", "contactor with coil", "L 0,6 8,6 19,1; L 20,6 28,6; A 20,6 20,2; H 14,4 14,14; R 10,14,8,8; L 0,18 10,18; L 18,18 28,18", "]K[", "]K["},
	{"relay", "relay with coil", "L 0,6 8,6 19,1; L 20,6 28,6; H 14,4 14,14; R 10,14,8,8; L 0,18 10,18; L 18,18 28,18", "]K[", "]K["},
	{"coil", "coil", "=10:18; R 10,4,8,16", "(K)", "(K)"},
	{"breaker", "circuit breaker", "=8:20; L 8,12 20,4; L 18,10 22,14; L 18,14 22,10", "]x[", "]x["},
	{"disconnect", "disconnector", "=8:20; L 8,12 20,4; L 20,9 20,15", "]D[", "]D["},
	{"switch-disconnect", "switch-disconnector", "=8:20; L 8,12 20,4; C 18,12,2; L 20,9 20,15", "]D[", "]D["},
	{"switch", "switch", makeContact + byHand, "] [", "] ["},
	{"push-button", "push button", makeContact + byPush, "] [", "] ["},
	{"key-switch", "key switch", makeContact + byKey, "] [", "] ["},
	{"pedal-switch", "pedal switch", makeContact + byPedal, "] [", "] ["},
	{"limit-switch", "limit switch", makeContact + byStop, "] [", "] ["},
	{"rotary-switch", "rotary switch", makeContact + byTurn, "] [", "] ["},
	{"direction-switch", "direction switch", centreOff + "; H 10,12 10,1; L 7,1 13,1; T 16,5 F; T 16,20 R", "", ""},
	{"resistor", "resistor", "=6:22; R 6,9,16,6", "[   ]", "[   ]"},
	{"potentiometer", "potentiometer", "=6:22; R 6,9,16,6; L 14,24 14,19; F 14,15 12,19 16,19", "[ ↑ ]", "[ ^ ]"},
	{"shunt", "shunt", "=6:22; R 6,9,16,6; L 9,9 9,2; L 19,9 19,2", "[ SH]", "[ SH]"},
	{"heater", "heater", "=6:22; R 6,8,16,8; L 10,8 10,16; L 14,8 14,16; L 18,8 18,16", "[|||]", "[|||]"},
	{"diode", "diode", "=10:18; G 10,6 10,18 18,12; L 18,6 18,18", "►┃", ">|"},
	{"led", "light-emitting diode", "=10:18; G 10,6 10,18 18,12; L 18,6 18,18; L 13,5 17,1; L 17,4 17,1 14,1; L 17,6 21,2; L 21,5 21,2 18,2", "", ""},
	{"capacitor", "capacitor", "=12:16; L 12,5 12,19; L 16,5 16,19", "┃┃", "||"},
	{"meter", "meter", circle + "T 14,12 m", "(m)", "(m)"},
	{"voltmeter", "voltmeter", circle + "T 14,12 V", "(V)", "(V)"},
	{"ammeter", "ammeter", circle + "T 14,12 A", "(A)", "(A)"},
	{"hour-meter", "hour meter", circle + "T 14,12 h", "(h)", "(h)"},
	{"charge-meter", "state-of-charge meter", circle + "T 14,12 %", "(%)", "(%)"},
	{"lamp", "lamp", "=7:21; C 14,12,7; L 9,7 19,17; L 9,17 19,7", "(X)", "(X)"},
	{"motor-dc", "DC motor", circle + "T 14,10 M; L 11,15 17,15; H 11,17 17,17", "(M)", "(M)"},
	{"motor-series", "series motor: armature and field", "L 0,7 8,7; C 14,7,6; L 20,7 28,7; T 14,7 M; L 0,20 8,20; A 8,20 12,20 16,20 20,20; L 20,20 28,20", "(M)", "(M)"},
	{"motor-separate", "separately excited motor: armature and field", "L 0,7 8,7; C 14,7,6; L 20,7 28,7; T 14,7 M; L 0,20 6,20; A 6,20 10,20 14,20 18,20 22,20; L 22,20 28,20", "(M)", "(M)"},
	{"motor-3ac", "three-phase motor", "C 14,14,10; L 6,0 6,8; L 14,0 14,4; L 22,0 22,8; T 14,10 M; T 14,18 3~", "(M3~)", "(M3~)"},
	{"winding-series", "series field winding", "L 0,12 8,12; A 8,12 12,12 16,12 20,12; L 20,12 28,12", "", ""},
	{"winding-shunt", "shunt or separate field winding", "L 0,12 6,12; A 6,12 10,12 14,12 18,12 22,12; L 22,12 28,12", "", ""},
	{"dc-dc", "DC-DC converter", converter + "L 7,6 12,6; L 7,9 12,9; L 16,15 21,15; L 16,18 21,18", "[=/=]", "[=/=]"},
	{"charger", "charger", converter + "A 6,7 10,7; A 14,7 10,7; L 16,15 21,15; L 16,18 21,18", "[~/=]", "[~/=]"},
	{"horn", "horn", "R 8,8,4,8; G 12,8 20,4 20,20 12,16; L 10,0 10,8; L 10,16 10,24", "", ""},
	{"buzzer", "buzzer", "A 6,12 22,12; L 6,12 22,12; L 10,12 10,24; L 18,12 18,24", "", ""},
	{"plug", "plug and socket", "=8:19; B 8,11,7,2; A 15,8 15,16", "■)", ">>"},
	{"connector", "connector", "=14:18; L 10,8 14,12 10,16; L 14,8 18,12 14,16", ">>", ">>"},
	{"earth", "earth", "L 14,0 14,10; L 6,10 22,10; L 9,14 19,14; L 12,18 16,18", "", ""},
	{"chassis", "frame", "L 14,0 14,10; L 6,10 22,10; L 8,10 4,16; L 14,10 10,16; L 20,10 16,16", "", ""},
	{"protective-earth", "protective earth", "C 14,13,10; L 14,0 14,10; L 8,10 20,10; L 10,14 18,14; L 12,18 16,18", "(PE)", "(PE)"},
	{"splice", "splice", "L 0,12 28,12; D 14,12,2", "─●─", "-*-"},
	{"busbar", "bus bar", "B 2,10,24,4; L 7,4 7,10; L 14,4 14,10; L 21,4 21,10", "━━━━━", "====="},
}

// flat lists the symbols of two rows with those that stand for them in one.
var flat = map[string]string{
	"solenoid": "contactor", "relay": "contact-no", "motor-series": "motor-dc", "motor-separate": "motor-dc",
}
