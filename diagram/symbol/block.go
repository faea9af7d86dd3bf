package symbol

// blocks are the renderings of symbols in three rows of seven letters, in box-drawing and
// in ASCII letters, for those that say more so than in one row.
var blocks = []struct {
	name           string
	letters, plain [3]string
}{
	{"battery", [3]string{" +│    ", "──┤ ├──", "  │ -  "}, [3]string{" +|    ", "--| |--", "  | -  "}},
	{"cell", [3]string{" +│    ", "──┤ ├──", "  │ -  "}, [3]string{" +|    ", "--| |--", "  | -  "}},
	{"solenoid", [3]string{"──] [──", "   ┊   ", "──(K)──"}, [3]string{"--] [--", "   :   ", "--(K)--"}},
	{"relay", [3]string{"──] [──", "   ┊   ", "──(K)──"}, [3]string{"--] [--", "   :   ", "--(K)--"}},
	{"contact-co", [3]string{"    ┌──", "──╱─┘  ", "    ───"}, [3]string{"    .--", "--/-'  ", "    ---"}},
	{"selector", [3]string{"    ───", "───    ", "    ───"}, [3]string{"    ---", "---    ", "    ---"}},
	{"direction-switch", [3]string{"   F───", "───    ", "   R───"}, [3]string{"   F---", "---    ", "   R---"}},
	{"motor-series", [3]string{"──(M)──", "       ", "──mmm──"}, [3]string{"--(M)--", "       ", "--mmm--"}},
	{"motor-separate", [3]string{"──(M)──", "       ", "─mmmm──"}, [3]string{"--(M)--", "       ", "-mmmm--"}},
	{"dc-dc", [3]string{"┌=────┐", "┤  ╱  ├", "└────=┘"}, [3]string{".=----.", "-  /  -", "'----='"}},
	{"charger", [3]string{"┌~────┐", "┤  ╱  ├", "└────=┘"}, [3]string{".~----.", "-  /  -", "'----='"}},
	{"earth", [3]string{"   │   ", " ──┴── ", "  ───  "}, [3]string{"   |   ", " ----- ", "  ---  "}},
	{"chassis", [3]string{"   │   ", " ──┴── ", " ╱ ╱ ╱ "}, [3]string{"   |   ", " ----- ", " / / / "}},
}

// Block renders the symbol in three rows of seven letters; false if one row says as much.
func (s Symbol) Block(ascii bool) (rows [3]string, ok bool) {
	for _, b := range blocks {
		if b.name != s.Name {
			continue
		}
		rows = b.letters
		if ascii {
			rows = b.plain
		}
		for i := range rows {
			if s.turned {
				rows[i] = reversed(rows[i], blades)
			}
		}
		return rows, true
	}
	return rows, false
}
