package calculator

import (
	"math"
	"strings"

	"completion.example/hydrostatics/unit"
)

// words writes a table for people. A column of lengths, or of volumes, is in one
// unit throughout, so that its numbers can be compared.
func (t Table) words() [][]string {
	cells := make([][]string, len(t.Rows))
	for i, row := range t.Rows {
		cells[i] = make([]string, len(row))
		for j, v := range row {
			cells[i][j] = Word(v)
		}
	}
	for j := range t.Header {
		align(t.Rows, cells, j, unit.Foot, "ft")
		align(t.Rows, cells, j, unit.Barrel, "bbl")
	}
	return cells
}

// align writes column j in unit u, where it holds quantities like u in several
// units and all of them can be read in u. Nothing takes the unit of the others.
func align[Q unit.Scalar](rows [][]any, cells [][]string, j int, u Q, symbol string) {
	seen := ""
	several := false
	for i, row := range rows {
		if j >= len(row) {
			continue
		}
		if q, ok := row[j].(Q); ok && q != 0 {
			if math.Abs(float64(q/u)) < 0.01 {
				return
			}
			_, name, _ := strings.Cut(cells[i][j], " ")
			several = several || seen != "" && name != seen
			seen = name
		}
	}
	if seen == "" {
		return
	}
	for i, row := range rows {
		if j >= len(row) {
			continue
		}
		switch q, ok := row[j].(Q); {
		case ok && several:
			cells[i][j] = unit.Significant(float64(q/u), digits) + " " + symbol
		case ok && q == 0:
			cells[i][j] = "0 " + seen
		}
	}
}
