package layout

import (
	"fmt"
	"strings"
)

// GraphError says what is wrong with the graph.
type GraphError struct {
	// ID is the box, wire or zone concerned.
	ID     string
	Reason string
}

// Error is the message for a person.
func (e *GraphError) Error() string { return fmt.Sprintf("%s: %s", e.ID, e.Reason) }

// WidthError says that the page is too narrow.
type WidthError struct {
	// Missing is the number of columns lacking.
	Missing int
	// ID is the box or zone that does not fit, "" when wires are what needs the room.
	ID string
}

// Error is the message for a person.
func (e *WidthError) Error() string {
	if e.ID == "" {
		return fmt.Sprintf("the wires need %d more columns: widen the page or split the drawing", e.Missing)
	}
	return fmt.Sprintf("%s needs %d more columns: widen the page", e.ID, e.Missing)
}

// PinError says that pinned boxes leave no room for a box.
type PinError struct{ ID string }

// Error is the message for a person.
func (e *PinError) Error() string {
	return fmt.Sprintf("no free spot for %s beside the boxes placed by hand: move one of them", e.ID)
}

// UnroutedError lists the wires that found no way because pinned boxes or the page leave no room. The drawing that
// comes with it is legal in all else.
type UnroutedError struct{ IDs []string }

// Error is the message for a person.
func (e *UnroutedError) Error() string {
	return "no way for wires " + strings.Join(e.IDs, ", ") + ": move the boxes at their ends apart"
}
