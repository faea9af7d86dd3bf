package board

// Blanks between cards that stand side by side and rows between those below each other.
const (
	cardGap = 2
	cardRow = 0
)

// Cards sets cards in columns of one width, filled one after the other, as many columns as
// the page holds. They start on a page of their own where the last one is not empty.
func (b *Board) Cards(cards []Item) {
	width := 1
	for _, c := range cards {
		width = max(width, c.W)
	}
	n := max(1, (b.columns+cardGap)/(width+cardGap))
	for len(cards) > 0 {
		if len(b.pages) == 0 || b.y > 0 {
			b.next()
		}
		limit := b.rows
		if limit == 0 || len(columns(cards, limit, n)) == len(cards) {
			limit = b.level(cards, n)
		}
		places := columns(cards, limit, n)
		for i, at := range places {
			b.put(cards[i], at.column*(width+cardGap), at.row)
			b.y = max(b.y, at.row+cards[i].H)
		}
		cards = cards[len(places):]
	}
}

// level is the fewest rows in which all cards find room in n columns.
func (b *Board) level(cards []Item, n int) int {
	rows, all := 0, 0
	for _, c := range cards {
		rows = max(rows, c.H)
		all += c.H + cardRow
	}
	for rows = max(rows, all/n); len(columns(cards, rows, n)) < len(cards); {
		rows++
	}
	return rows
}

type place struct{ column, row int }

// columns places as many cards as find room in n columns of a number of rows, at least one.
func columns(cards []Item, rows, n int) []place {
	var places []place
	at := place{}
	for _, c := range cards {
		if at.row > 0 && at.row+c.H > rows {
			at = place{column: at.column + 1}
		}
		if at.column == n {
			break
		}
		places = append(places, at)
		at.row += c.H + cardRow
	}
	return places
}
