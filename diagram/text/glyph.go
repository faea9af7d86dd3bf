package text

import "example.com/lugbook/diagram/scene"

// pen is a style of line that the character set has glyphs for.
type pen uint8

const (
	light pen = iota
	heavy
	double
)

// penOf is the pen of a wire's weight.
func penOf(w scene.Weight) pen {
	switch w {
	case scene.Traction, scene.Trunk:
		return heavy
	case scene.Mains:
		return double
	default:
		return light
	}
}

// The arms of a glyph as bits: the ways that its line leaves the cell.
const (
	north = 1 << iota
	east
	south
	west
)

// arm is the bit of the way from one cell to its neighbour.
func arm(from, to scene.Point) int {
	switch {
	case to.Y < from.Y:
		return north
	case to.X > from.X:
		return east
	case to.Y > from.Y:
		return south
	default:
		return west
	}
}

// glyphs is a character set.
type glyphs struct {
	ascii       bool
	wire        [3][16]rune   // by pen and arms; only straight runs and bends
	dashed      [3][2]rune    // by pen: level, upright
	frame       [16]rune      // light frame and brackets, by arms
	heavy       [16]rune      // heavy frame, by arms
	dashedFrame [16]rune      // frame of a removed part
	join        [2][3][4]rune // terminal: by frame (light, heavy), pen of the wire, side
	zone        [16]rune
	flag        map[scene.FlagKind]rune // but off-page
	offPage     [4]rune                 // by the side of the flag that the wire meets
	arrow       [4]rune                 // by the way that it points
	rule        rune
}

var unicodeGlyphs = glyphs{
	wire: [3][16]rune{
		light:  arms("│─╰╭╮╯"),
		heavy:  arms("┃━┗┏┓┛"),
		double: arms("║═╚╔╗╝"),
	},
	dashed:      [3][2]rune{light: {'╌', '╎'}, heavy: {'╍', '╏'}, double: {'═', '║'}},
	frame:       withTees(arms("│─└┌┐┘"), "├┤┬┴"),
	heavy:       arms("┃━┗┏┓┛"),
	dashedFrame: arms("╎╌└┌┐┘"),
	join: [2][3][4]rune{
		{light: sides("┴├┬┤"), heavy: sides("┸┝┰┥"), double: sides("╨╞╥╡")},
		{light: sides("┷┠┯┨"), heavy: sides("┻┣┳┫"), double: sides("╨╞╥╡")},
	},
	zone:    arms("┆┄└┌┐┘"),
	flag:    map[scene.FlagKind]rune{scene.Cut: '╳', scene.Capped: '▪', scene.Untraced: '?'},
	offPage: sides("▼◄▲►"),
	arrow:   sides("▲►▼◄"),
	rule:    '─',
}

var asciiGlyphs = glyphs{
	ascii: true,
	wire: [3][16]rune{
		light:  arms("|-++++"),
		heavy:  arms("|=++++"),
		double: arms(":~++++"),
	},
	dashed:      [3][2]rune{light: {'-', '|'}, heavy: {'=', '|'}, double: {'~', ':'}},
	frame:       withTees(arms("|-++++"), "||--"),
	heavy:       arms("|=++++"),
	dashedFrame: arms(":-++++"),
	join: [2][3][4]rune{
		{light: sides("****"), heavy: sides("****"), double: sides("****")},
		{light: sides("****"), heavy: sides("****"), double: sides("****")},
	},
	zone:    arms("......"),
	flag:    map[scene.FlagKind]rune{scene.Cut: 'x', scene.Capped: '#', scene.Untraced: '?'},
	offPage: sides("v<^>"),
	arrow:   sides("^>v<"),
	rule:    '-',
}

// arms spreads six letters over the arms: upright, level, then the bends north-east,
// east-south, south-west, west-north.
func arms(letters string) (set [16]rune) {
	r := []rune(letters)
	set[north|south], set[east|west] = r[0], r[1]
	set[north|east], set[east|south], set[south|west], set[west|north] = r[2], r[3], r[4], r[5]
	return set
}

// withTees adds the glyphs with three arms: without west, east, north, south.
func withTees(set [16]rune, letters string) [16]rune {
	r := []rune(letters)
	set[north|east|south], set[north|south|west] = r[0], r[1]
	set[east|south|west], set[north|east|west] = r[2], r[3]
	return set
}

// sides spreads four letters over the sides north, east, south, west.
func sides(letters string) (set [4]rune) {
	copy(set[:], []rune(letters))
	return set
}

// gaps are the patterns of lines by what a state does to their wires: one cell in so many
// is left blank.
var gaps = [...]int{scene.NotShown: 0, scene.Unjudged: 0, scene.Dead: 2, scene.Return: 4, scene.Live: 0}

// line is the glyph of a wire that leaves a cell by two arms. A removed wire is
// drawn dashed; in ASCII every other cell of it is left blank or dotted.
func (g *glyphs) line(w scene.Wire, arms int, at scene.Point) rune {
	p := penOf(w.Weight)
	level := arms == east|west
	if !level && arms != north|south {
		return g.wire[p][arms]
	}
	if w.Change != scene.Removed {
		along := at.X
		if !level {
			along = at.Y
		}
		if n := gaps[w.Flow.Energy]; n > 0 && along%n == n-1 {
			return ' '
		}
		return g.wire[p][arms]
	}
	switch {
	case g.ascii && level && at.X%2 == 1:
		return ' '
	case g.ascii && !level && at.Y%2 == 1:
		return ':'
	case level:
		return g.dashed[p][0]
	default:
		return g.dashed[p][1]
	}
}
