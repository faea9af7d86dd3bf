package meter

import (
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
)

// JudgedBy says in one line by what it is judged whether a cart moves, and what is left
// out; empty if the sheet has nothing of a drive.
func JudgedBy(n *network.Network) string {
	var by []string
	var pins bool
	drive := false
	links := n.Links()
	for i := range links {
		if l := &links[i]; isTraction(n, l) {
			drive = true
			pins = pins || l.Is(model.LoadElement) && len(throttlePins(l.Def)) > 0
		}
	}
	if !drive {
		return ""
	}
	direct, phased := false, false
	for _, m := range motors(n) {
		direct = direct || len(m.armatures)+len(m.fields) > 0
		phased = phased || len(m.phases) > 0
	}
	for _, item := range []struct {
		there bool
		text  string
	}{
		{!direct && !phased, "the controller's current alone, without a motor"},
		{direct, "armature and field current"},
		{phased, "phase leads"},
		{pins && len(throttles(n)) > 0, "throttle leads"},
		{len(brakes(n)) > 0, "brake feed"},
	} {
		if item.there {
			by = append(by, item.text)
		}
	}
	text := by[0]
	if last := len(by) - 1; last > 0 {
		text = strings.Join(by[:last], ", ") + " and " + by[last]
	}
	return "Whether it moves is judged by " + text + " only, not by sensors."
}
