package strictyaml

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// The tests read and write the stock list of a hardware store.

type store struct {
	Version int      `yaml:"store,required" doc:"version of the file format"`
	Name    string   `yaml:"name,required" doc:"name over the door"`
	Open    bool     `yaml:"open" doc:"true if customers may enter"`
	Rating  float64  `yaml:"rating" doc:"stars, out of five"`
	Tags    []string `yaml:"tags,flow" doc:"words to find it by"`
	Notes   []string `yaml:"notes" doc:"one remark each"`
	Paint   colour   `yaml:"paint" doc:"colour of the door"`
	Site    *spot    `yaml:"site,flow" doc:"where it stands"`
	Moves   []spot   `yaml:"moves,flow" doc:"where it stood before"`
	Routes  []route  `yaml:"routes" doc:"ways to get there"`
	Gauges  []gauge  `yaml:"gauges,keyed" doc:"figures on the wall"`
	Aisles  []aisle  `yaml:"aisles,keyed" doc:"by name"`
	Drawers []drawer `yaml:"drawers,keyed,flow" doc:"by label"`
	Contact `yaml:",inline"`
	Private string
}

// Contact is how to reach the store.
type Contact struct {
	Phone string `yaml:"phone" doc:"with area code"`
}

type spot struct {
	X int `yaml:"x,required" doc:"metres east"`
	Y int `yaml:"y,required" doc:"metres north"`
}

type route struct {
	From string `yaml:"from,required" doc:"start"`
	Far  metres `yaml:"far,required" doc:"length, such as 12 m"`
}

type gauge struct {
	Name   string `yaml:",key"`
	Value  metres `yaml:"value,required,scalar" doc:"the figure"`
	Source string `yaml:"source" doc:"who read it"`
}

type aisle struct {
	Name  side     `yaml:",key"`
	Note  string   `yaml:"note" doc:"anything"`
	Items []item   `yaml:"items,keyed" doc:"by label"`
	Ends  []drawer `yaml:"ends,keyed" doc:"at its ends"`
}

type item struct {
	Label string   `yaml:",key"`
	Count int      `yaml:"count" doc:"how many"`
	Long  metres   `yaml:"long" doc:"length"`
	Paint colour   `yaml:"paint" doc:"colour"`
	Hues  []colour `yaml:"hues,flow" doc:"other colours"`
	Near  []string `yaml:"near,flow" doc:"labels of neighbours"`
}

type drawer struct {
	Label string `yaml:",key"`
	Holds string `yaml:"holds" doc:"what is in it"`
	Count int    `yaml:"count" doc:"how many"`
}

type colour string

func (colour) Names() []string { return []string{"red", "green", "blue", "orange"} }

type side string

func (side) Names() []string { return []string{"left", "right", "back"} }

// metres is a length with a written form: whole metres and whether it is recorded.
type metres struct {
	n     int
	known bool
}

func (m metres) IsZero() bool { return !m.known }

func (m metres) MarshalText() ([]byte, error) { return fmt.Appendf(nil, "%d m", m.n), nil }

func (m *metres) UnmarshalText(text []byte) error {
	number, unit, _ := strings.Cut(string(text), " ")
	n, err := strconv.Atoi(number)
	if err != nil || unit != "m" && unit != "km" {
		return errors.New("expected a length such as 12 m or 3 km")
	}
	if unit == "km" {
		n *= 1000
	}
	*m = metres{n: n, known: true}
	return nil
}

func (metres) FormHint() (pattern, example string) { return `^-?[0-9]+ k?m$`, "12 m" }

// full is a canonical file that uses every kind of field.
const full = `# Stock of the corner store.
# Kept by hand.

# bumped when the format changes
store: 1
name: "Bolt & Nut: all sizes" # as painted
open: true
rating: 4.5
tags: [bolts, nuts, "a, b"]

notes:
  - plain remark
  - "12" # a number that is text
  - "two\nlines"
  # more to come

paint: red
site: {x: 3, y: -4}

moves:
  - {x: 1, y: 2} # the shed
  - {x: 0, y: 0}

routes:
  # the short one
  - from: bridge
    far: 120 m # paced
  - from: mill
    far: 2000 m
    # muddy in winter

gauges:
  door: 2 m
  shelf: # measured twice
    value: 3 m
    source: tape

aisles:
  left:
    note: tall things

    items:
      # the good ones
      ladder:
        count: 2
        long: 4 m
        paint: orange
        hues: [red, blue]
      "7": {}

  back:
    ends:
      e1:
        holds: rope

drawers:
  a1: {holds: washers, count: 400}
  # empty for now
  a2: {} # swollen shut

phone: 555 0100
# end of the list
`
