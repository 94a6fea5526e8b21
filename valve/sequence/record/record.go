package record

import (
	"completion.example/valve/sequence"
)

// Record is what instruments at surface have shown. Read makes one.
type Record struct {
	rows    []row
	columns []column
}

// row is one line of the record: SI, NaN where nothing was read.
type row struct {
	line  int     // of the file
	time  float64 // s, since the first
	step  int     // of the plan
	cells []float64
}

// what an instrument shows.
type what int

const (
	pressure what = iota
	in
	out
	weight
)

func (w what) String() string { return [...]string{"pressure", "in", "out", "weight"}[w] }

// column is one instrument.
type column struct {
	head        string
	what        what
	compartment string // empty: weight
	within      float64
	known       bool // within was given
}

// Steps are the numbers of the plan's steps, from 0, that the record has rows of.
func (r *Record) Steps() []int {
	var all []int
	for _, x := range r.rows {
		if len(all) == 0 || all[len(all)-1] != x.step {
			all = append(all, x.step)
		}
	}
	return all
}

// Rows is how many rows the record has.
func (r *Record) Rows() int { return len(r.rows) }

// part is the record of one step.
type part struct {
	step    int
	rows    []row
	time    []float64
	columns []column
	noise   []float64   // by column: standard deviation
	filled  [][]float64 // by column, gaps closed by straight lines
	ample   []bool      // by column: read often enough to say something
}

func (r *Record) part(step int) *part {
	p := &part{step: step, columns: r.columns}
	for _, x := range r.rows {
		if x.step == step {
			p.rows = append(p.rows, x)
			p.time = append(p.time, x.time)
		}
	}
	for c := range r.columns {
		y := p.values(c)
		p.noise, p.filled, p.ample = append(p.noise, noise(y)), append(p.filled, filled(y)), append(p.ample, ample(y))
	}
	return p
}

// values of a column.
func (p *part) values(c int) []float64 {
	all := make([]float64, len(p.rows))
	for i, x := range p.rows {
		all[i] = x.cells[c]
	}
	return all
}

// column finds an instrument; -1: there is none.
func (p *part) column(w what, compartment string) int {
	for i, c := range p.columns {
		if c.what == w && c.compartment == compartment && p.ample[i] {
			return i
		}
	}
	return -1
}

// ample tells whether an instrument was read often enough to say something.
func ample(y []float64) bool {
	n := 0
	for _, v := range y {
		if v == v {
			n++
		}
	}
	return n >= 3
}

// surfaces are the compartments that reach the surface.
func surfaces(p *sequence.Plan) []string {
	var all []string
	for _, c := range p.Compartments {
		if c.Surface {
			all = append(all, c.Name)
		}
	}
	return all
}
