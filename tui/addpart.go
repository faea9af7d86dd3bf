package tui

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
)

// addPart asks for a kind, a zone and a designator. Esc goes back by one question.
func addPart(d *desk) tea.Cmd {
	depth := len(d.layers)
	kinds := kindList("add a part: which kind?", func(d *desk, kind string) tea.Cmd { return d.addKind(depth, kind) })
	kinds.stays = true
	d.push(kinds)
	return nil
}

// addKind asks where a part of a kind goes.
func (d *desk) addKind(depth int, kind string) tea.Cmd {
	cmd := pickZone(d, "where is it?", func(d *desk, zone model.ZoneID, add []edit.Edit) error {
		return d.addIn(depth, model.Part{Kind: kind, Zone: zone}, add)
	})
	if zones, ok := topOf[*listLayer](d); ok {
		zones.stays = true
	}
	return cmd
}

// addIn asks for the designator and adds the part.
func (d *desk) addIn(depth int, p model.Part, before []edit.Edit) error {
	d.ask("designator", "Enter takes it; or another short name, such as sol or b3", string(d.freePart(p.Kind)), func(d *desk, text string) (tea.Cmd, error) {
		p.ID = model.PartID(text)
		return nil, d.add(depth, p, before)
	})
	return nil
}

// add puts a part on the sheet, closes the questions and selects it.
func (d *desk) add(depth int, p model.Part, before []edit.Edit) error {
	if err := d.apply(together(edit.AddPart{Sheet: d.sheetName, Part: p}, before)); err != nil {
		return err
	}
	d.layers = d.layers[:min(depth, len(d.layers))]
	d.lastPart = p
	d.goTo(ofPart(p.ID))
	d.say("added " + string(p.ID) + "; A adds another one like it, u undoes it")
	return nil
}

// addAnother adds a part like the one added last, at the same place.
func addAnother(d *desk) tea.Cmd {
	p := model.Part{Kind: d.lastPart.Kind, Zone: d.lastPart.Zone}
	p.ID = d.freePart(p.Kind)
	if err := d.add(len(d.layers), p, nil); err != nil {
		d.warn(explain(err))
	}
	return nil
}

// freePart is a designator of a kind that no sheet uses: the kind's own, or with the
// next free number.
func (d *desk) freePart(kind string) model.PartID {
	first := "x1"
	if def := d.cat().Definition(kind); def != nil {
		first = def.Designator
	}
	taken := func(id string) bool {
		return slices.ContainsFunc(d.job().Sheets, func(s model.Sheet) bool {
			return slices.ContainsFunc(s.Parts, func(p model.Part) bool { return strings.EqualFold(string(p.ID), id) })
		})
	}
	if !taken(first) {
		return model.PartID(first)
	}
	stem := strings.TrimRight(first, "0123456789")
	return model.PartID(model.FreeID(stem, func(id string) bool { return taken(id) || stem == first && id == stem+"1" }))
}

// addZone asks for the name of a new zone.
func addZone(d *desk) tea.Cmd {
	d.ask("new zone", "its name, such as pack tray", "", func(d *desk, text string) (tea.Cmd, error) {
		return nil, d.act(edit.AddZone{Zone: newZone(text)})
	})
	return nil
}

// setRun asks for the routed length between two zones.
func setRun(d *desk) tea.Cmd { return askRun(d, "") }

func askRun(d *desk, was string) tea.Cmd {
	d.ask("run", "zone, zone, length along the route: tray dash 0.8 m", was, func(d *desk, text string) (tea.Cmd, error) {
		run, err := parseRun(text)
		if err != nil {
			return nil, err
		}
		return nil, d.act(run)
	})
	return nil
}
