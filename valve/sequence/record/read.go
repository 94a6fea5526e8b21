package record

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/valve/sequence"
)

// Bounds of what is read: a day by the second, and every instrument of a wellhead.
const (
	mostRows    = 100_000
	mostColumns = 200
	mostFaults  = 20
	leastRows   = 4 // of a step
)

// Read reads the record of a job that followed a plan, from CSV.
//
// The first line names the columns, each with its unit in brackets:
//
//	time [min],step,tubing pressure [psi],tubing in [bbl],tubing out [bbl],weight [klbf]
//
// "time" alone is a clock time (15:04:05, or RFC 3339) or a number with its unit in
// brackets (s, min or h). "step" is the name or the number of the plan's step, empty
// where it is that of the row before; the steps come in the plan's order. "pressure",
// "in" and "out" stand behind the name of a compartment that reaches the surface;
// volumes run on from row to row. "weight" is the weight indicator. An empty cell
// wasn't read. A cell may bear a unit of its own.
//
// Rows that begin with "offset" or "within" instead of a time give, for each column,
// by how much it shows too much, which is taken off, and how far it may be trusted
// beyond its noise. Lines that begin with # are left out. Where semicolons part the
// columns, a comma is a decimal point.
//
// The error lists every fault with its line.
func Read(data []byte, p *sequence.Plan) (*Record, error) {
	if p == nil {
		return nil, errors.New("record: no plan")
	}
	p, err := p.Derive()
	if err != nil {
		return nil, err
	}
	p = p.Expanded()
	x := &reading{plan: p, record: &Record{}, step: -1, faults: fault.In("record")}
	x.all(bytes.TrimPrefix(data, []byte("\ufeff")))
	if err := x.faults.Err(); err != nil {
		return nil, err
	}
	return x.record, nil
}

type reading struct {
	plan    *sequence.Plan
	record  *Record
	comma   bool // a comma is a decimal point
	heads   []head
	offset  []float64
	step    int
	seconds float64 // of the time column's unit; 0: clock times
	began   float64
	day     float64 // seconds added for midnights that have passed
	last    float64
	faults  fault.Faults
	count   int
	left    int
}

// head is what a column of the file is.
type head struct {
	name   string
	unit   string
	time   bool
	step   bool
	column int // of the record, or -1
}

func (x *reading) fault(line int, where, format string, args ...any) {
	if x.count++; x.count > mostFaults {
		x.left++
		return
	}
	path := fmt.Sprintf("line %d", line)
	if where != "" {
		path += ", " + where
	}
	x.faults.New(path, format, args...)
}

func (x *reading) all(data []byte) {
	first, _, _ := bytes.Cut(data, []byte("\n"))
	for rest := data; bytes.HasPrefix(bytes.TrimSpace(first), []byte("#")) || len(bytes.TrimSpace(first)) == 0 && len(rest) > 0; {
		_, rest, _ = bytes.Cut(rest, []byte("\n"))
		first, _, _ = bytes.Cut(rest, []byte("\n"))
		if len(rest) == 0 {
			break
		}
	}
	r := csv.NewReader(bytes.NewReader(data))
	r.Comment, r.TrimLeadingSpace, r.FieldsPerRecord, r.ReuseRecord = '#', true, -1, true
	if bytes.Contains(first, []byte(";")) && !bytes.Contains(first, []byte(",")) {
		r.Comma, x.comma = ';', true
	}
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			var p *csv.ParseError
			line := 0
			if errors.As(err, &p) {
				line, err = p.Line, p.Err
			}
			x.fault(line, "", "%v", err)
			break
		}
		line, _ := r.FieldPos(0)
		switch {
		case x.heads == nil:
			if !x.header(line, cells) {
				return
			}
		case strings.TrimSpace(strings.Join(cells, "")) == "":
		case len(cells) > len(x.heads):
			x.fault(line, "", "has %d cells; the first line names %d columns", len(cells), len(x.heads))
		default:
			x.row(line, cells)
		}
		if len(x.record.rows) > mostRows {
			x.fault(line, "", "is one row too many; there may be %d: keep every second or every fifth", mostRows)
			break
		}
	}
	x.whole()
}

// whole says what is wrong with the record as a whole.
func (x *reading) whole() {
	if x.left > 0 {
		x.faults.New("file", "has %d faults more", x.left)
	}
	switch {
	case x.heads == nil:
		x.faults.New("file", "is empty; its first line must name the columns, such as time [min],step,tubing pressure [psi]")
		return
	case len(x.record.rows) == 0 && x.count == 0:
		x.faults.New("file", "has no rows")
	}
	rows := map[int]int{}
	for _, r := range x.record.rows {
		rows[r.step]++
	}
	for i, s := range x.plan.Steps {
		if n := rows[i]; n > 0 && n < leastRows && x.count == 0 {
			x.faults.New("step "+strconv.Quote(s.Name), "has %d rows; must have at least %d", n, leastRows)
		}
	}
}

// row reads one line.
func (x *reading) row(line int, cells []string) {
	first := strings.ToLower(strings.TrimSpace(cells[0]))
	if first == "offset" || first == "within" {
		x.about(line, first, cells)
		return
	}
	r := row{line: line, step: x.step, cells: make([]float64, len(x.record.columns))}
	for i := range r.cells {
		r.cells[i] = math.NaN()
	}
	timed := false
	for i, text := range cells {
		h := &x.heads[i]
		text = strings.TrimSpace(text)
		switch {
		case text == "":
		case h.time:
			timed = x.time(line, text, &r)
		case h.step:
			x.named(line, text, &r)
		default:
			v, err := x.value(h, text)
			if err != nil {
				x.fault(line, h.name, "%v", err)
				continue
			}
			r.cells[h.column] = v - x.offset[h.column]
		}
	}
	switch {
	case r.step < 0:
		x.fault(line, "step", "is empty; the first row must name its step")
		x.step = len(x.plan.Steps) // said once
		return
	case r.step >= len(x.plan.Steps):
		return
	case !timed:
		if strings.TrimSpace(strings.Join(cells, "")) != "" {
			x.fault(line, "time", "is missing or can't be read")
		}
		return
	}
	x.step = r.step
	x.record.rows = append(x.record.rows, r)
}

// about reads a row that says something about the instruments.
func (x *reading) about(line int, kind string, cells []string) {
	if len(x.record.rows) > 0 {
		x.fault(line, "", "%s must stand before the first row that was read", kind)
		return
	}
	for i, text := range cells {
		h := &x.heads[i]
		if text = strings.TrimSpace(text); text == "" || h.column < 0 {
			continue
		}
		v, err := x.value(h, text)
		switch {
		case err != nil:
			x.fault(line, h.name, "%v", err)
		case kind == "offset":
			x.offset[h.column] = v
		case !(v >= 0):
			x.fault(line, h.name, "is %s; must not be negative", text)
		default:
			x.record.columns[h.column].within, x.record.columns[h.column].known = v, true
		}
	}
}

// value reads a number in the unit of its column, or with one of its own.
func (x *reading) value(h *head, text string) (float64, error) {
	if x.comma {
		text = strings.ReplaceAll(text, ",", ".")
	}
	if _, err := strconv.ParseFloat(text, 64); err == nil {
		if h.unit == "" {
			return 0, fmt.Errorf("is %q and has no unit; give one in the head of the column, such as %s [%s]", text, h.name, usual(x.record.columns[h.column].what))
		}
		text += " " + h.unit
	}
	switch x.record.columns[h.column].what {
	case pressure:
		v, err := unit.Read[unit.Pressure](text)
		return float64(v), err
	case weight:
		v, err := unit.Read[unit.Force](text)
		return float64(v), err
	}
	v, err := unit.Read[unit.Volume](text)
	return float64(v), err
}

func usual(w what) string { return [...]string{"psi", "bbl", "bbl", "klbf"}[w] }
