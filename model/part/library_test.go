package part

import (
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/unit"
)

func TestEveryFileIsAKind(t *testing.T) {
	files, err := fs.Glob(library, "library/*")
	require.NoError(t, err)
	definitions, problems := readLibrary(library)
	require.NoError(t, problems.Err())
	require.Len(t, definitions, len(files))
	for _, f := range files {
		kind := strings.TrimSuffix(strings.TrimPrefix(f, "library/"), ".yaml")
		require.NotNil(t, Library().Definition(kind), f)
	}
}

func TestDefinitionsStandByFamilyThenKind(t *testing.T) {
	families := model.Family("").Names()
	last, seen := model.Definition{}, map[string]bool{}
	for _, d := range Definitions() {
		at, before := slices.Index(families, string(d.Family)), slices.Index(families, string(last.Family))
		require.True(t, at > before || at == before && d.Kind > last.Kind, "%s after %s", d.Kind, last.Kind)
		seen[string(d.Family)] = true
		last = d
	}
	require.Len(t, seen, len(families), "a family without a kind")
}

func TestLibraryHasTheKindsOfTheTrade(t *testing.T) {
	terminals := map[string]string{
		"lead-battery-6v": "+ -", "lead-battery-8v": "+ -", "lead-battery-12v": "+ -",
		"lithium-pack-12": "POS NEG CAN-H CAN-L wake", "lithium-pack-16": "POS NEG CAN-H CAN-L wake", "lithium-pack-24": "POS NEG CAN-H CAN-L wake",
		"contactor-36v": "L1 L2 coil+ coil-", "contactor-48v": "L1 L2 coil+ coil-", "contactor-72v": "L1 L2 coil+ coil-",
		"reverse-contactor": "COM NC NO coil+ coil-", "relay": "86 85 30 87 87a",
		"controller-series": "B+ B- M- A2 KSI 2 3", "resistor-bank": "T1 T2 T3 T4 OUT", "wiper-switch": "ARM C1 C2 C3 C4 C5",
		"motor-series": "A1 A2 S1 S2", "motor-sepex": "A1 A2 F1 F2", "motor-ac": "U V W", "motor-pm": "A1 A2",
		"direction-rotary": "X1 X2 S1 S2 micro-com micro-no rev-com rev-no", "direction-rocker": "COM F R",
		"key-switch": "BAT IGN", "key-switch-acc": "BAT IGN ACC", "pedal-switch": "COM NO NC",
		"throttle-2wire": "a b", "throttle-3wire": "high wiper low", "tow-run": "1 2",
		"charge-computer-return": "NEG-PACK NEG-CART supply sense lamp lockout-a lockout-b",
		"charge-computer-feed":   "NEG-PACK NEG-CART supply sense lamp lockout-a lockout-b",
		"charge-computer-signal": "NEG-PACK NEG-CART supply sense lamp lockout",
		"receptacle":             "+ - sense", "receptacle-interlock": "+ - sense interlock-a interlock-b",
		"charger-onboard-36v": "DC+ DC- AC-L AC-N AC-PE interlock-a interlock-b", "charger-onboard-48v": "DC+ DC- AC-L AC-N AC-PE interlock-a interlock-b",
		"charger-onboard-72v": "DC+ DC- AC-L AC-N AC-PE interlock-a interlock-b", "ac-inlet": "L N PE",
		"reducer-isolated": "IN+ IN- OUT+ OUT- WAKE", "reducer-common-negative": "IN+ NEG OUT+ WAKE",
		"fuse-holder": "in out", "fuse-class-t": "in out", "fuse-inline": "in out", "fuse-block-6": "IN 1 2 3 4 5 6",
		"breaker": "in out", "isolator": "in out", "bus-post": "POST", "bus-bar-4": "1 2 3 4",
		"shunt": "BATT LOAD sense+ sense-", "soc-meter": "supply+ supply- sense+ sense-", "voltmeter": "+ -",
		"precharge-resistor": "a b", "diode": "anode cathode", "can-terminator": "CAN-H CAN-L",
		"lamp-headlight": "+ -", "lamp-tail": "+ -", "lamp-brake": "+ -", "lamp-12v": "+ -", "lamp-charge": "+ -", "horn-12v": "+ -",
		"buzzer": "+ -", "buzzer-12v": "+ -", "usb-outlet": "+ -", "stereo": "+ -", "beacon": "+ -", "lamp-work": "+ -",
		"light-switch": "IN OUT", "horn-button": "IN OUT", "brake-switch": "IN OUT", "em-brake": "+ -",
		"encoder": "supply+ supply- A B", "speed-sensor": "supply+ supply- signal",
		"frame-point": "FRAME", "splice": "J", "connector-2": "1a 1b 2a 2b", "connector-4": "1a 1b 2a 2b 3a 3b 4a 4b",
	}
	for kind, names := range terminals {
		d := Library().Definition(kind)
		require.NotNil(t, d, kind)
		require.Equal(t, names, strings.Join(terminalNames(d), " "), kind)
	}
	for _, kind := range []string{"controller-sepex", "controller-ac", "controller-ac-72v", "connector-6", "connector-12"} {
		require.NotNil(t, Library().Definition(kind), kind)
	}
}

func terminalNames(d *model.Definition) []string {
	var names []string
	for _, t := range d.Terminals {
		names = append(names, t.Name)
	}
	return names
}

func TestTerminalsSayWhatTheyAre(t *testing.T) {
	for _, d := range Definitions() {
		folded := map[string]bool{}
		for _, terminal := range d.Terminals {
			at := d.Kind + "." + terminal.Name
			require.NotEmpty(t, terminal.Means, at)
			require.NotEmpty(t, terminal.Serves, at)
			require.Equal(t, terminal.Form == model.StudForm, !terminal.Stud.IsZero(), "%s: a stud has a size, nothing else has", at)
			require.False(t, folded[strings.ToLower(terminal.Name)], "%s differs from another terminal only in case", at)
			folded[strings.ToLower(terminal.Name)] = true
		}
	}
}

// A kind that must see one side positive says so at its terminals.
func TestPolarisedElementsHavePoles(t *testing.T) {
	always := []model.ElementKind{model.SourceElement, model.ChargerElement, model.ConverterElement, model.CapacitorElement}
	seen := 0
	for _, d := range Definitions() {
		for _, e := range d.Elements {
			if !e.Polarised && !slices.Contains(always, e.Is) {
				continue
			}
			seen++
			require.Equal(t, model.Positive, d.Terminal(e.Between[0]).Pole, "%s: %s", d.Kind, e.ID)
			require.Equal(t, model.Negative, d.Terminal(e.Between[1]).Pole, "%s: %s", d.Kind, e.ID)
		}
	}
	require.Greater(t, seen, 50)
}

// Every element has the figures without which it cannot be computed.
func TestElementsHaveTheFiguresThatTheyNeed(t *testing.T) {
	for _, d := range Definitions() {
		for _, e := range d.Elements {
			at := d.Kind + ": " + e.ID
			for _, rating := range needed(&e) {
				require.NotEmpty(t, rating, at)
			}
			for rating, of := range map[string]unit.Dimension{
				e.Volts: unit.Voltage, e.Ohms: unit.Resistance, e.Amps: unit.Current, e.Watts: unit.Power,
				e.Farads: unit.Capacitance, e.MaxVolts: unit.Voltage, e.PullIn: unit.Voltage, e.OutVolts: unit.Voltage,
			} {
				if rating != "" {
					r, ok := d.Rating(rating)
					require.True(t, ok, "%s: %s", at, rating)
					require.Equal(t, of, r.Value.Dimension(), "%s: %s", at, rating)
				}
			}
			if len(e.Fed) > 0 || len(e.Blocked) > 0 {
				require.NotEmpty(t, e.Against, at)
				require.NotEmpty(t, e.PullIn, at)
			}
		}
	}
}

func needed(e *model.Element) []string {
	switch e.Is {
	case model.SourceElement:
		return []string{e.Volts, e.Ohms, e.MaxVolts}
	case model.ChargerElement:
		return []string{e.Volts, e.Amps}
	case model.ConverterElement:
		return []string{e.OutVolts, e.Amps, strings.Join(e.Out, "")}
	case model.CoilElement:
		return []string{e.Volts, e.Ohms, e.PullIn}
	case model.FuseElement:
		return []string{e.Amps, e.Ohms, e.MaxVolts}
	case model.CapacitorElement:
		return []string{e.Farads, e.MaxVolts}
	case model.ResistanceElement, model.ContactElement:
		return []string{e.Ohms}
	case model.LoadElement:
		return []string{e.Amps}
	}
	return nil
}

func TestBrokenLibraryFilesAreReported(t *testing.T) {
	_, problems := readLibrary(fstest.MapFS{})
	require.ErrorContains(t, problems.Err(), "no files")

	good, err := fs.ReadFile(library, "library/diode.yaml")
	require.NoError(t, err)
	broken := strings.Replace(string(good), "[anode, cathode]", "[anode, kathode]", 1)
	_, problems = readLibrary(fstest.MapFS{"library/diode.yaml": {Data: []byte(broken)}})
	require.Len(t, problems, 1)
	require.Equal(t, "kathode", problems[0].Text)
	require.Equal(t, "cathode", problems[0].Nearest)
	require.Contains(t, strings.Split(broken, "\n")[problems[0].Line-1], "kathode")
}
