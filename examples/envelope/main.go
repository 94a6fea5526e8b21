// Envelope holds loads against what a packer bears, its polygon given or built
// from the ratings of its parts.
package main

import (
	"flag"
	"fmt"
	"io"
	"os"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/internal/strictjson"
	"completion.example/packer"
	"completion.example/tubular"
)

var command = calculator.Command{
	Name:     "envelope",
	Question: "does the packer hold its loads, by what margin, and to what can it be tested from above and from below?",
	Setup:    setup,
	Picture:  true,
}

func main() { calculator.Main(command) }

// inputs are the flags.
type inputs struct {
	file, loads  string
	ratings      packer.Ratings
	seat         packer.Seat
	below, above unit.Pressure
	tubing       unit.Force
	hand         float64
}

// namedLoad is a load as a file of loads has it.
type namedLoad struct {
	Name         string        `json:"name"`
	Differential unit.Pressure `json:"differential"`
	Axial        unit.Force    `json:"axial"`
}

func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	var in inputs
	flags.StringVar(&in.file, "polygon", "", "JSON `file` of the envelope's corners; the ratings are then not used")
	flags.StringVar(&in.loads, "loads", "", "JSON `file` with a list of name, differential and axial")
	r := &in.ratings
	flags.TextVar(&r.FromBelow, "from-below", 7500*unit.PSI, "differential that the element holds from below")
	flags.TextVar(&r.FromAbove, "from-above", 6000*unit.PSI, "differential that the element holds from above")
	flags.TextVar(&r.Tension, "tension", 150*unit.Kilopound, "pull of the tubing that the mandrel bears")
	flags.TextVar(&r.Compression, "compression", 100*unit.Kilopound, "set-down of the tubing that the mandrel bears")
	flags.TextVar(&r.Up, "slips-up", 300*unit.Kilopound, "force on the casing that the slips bear, up")
	flags.TextVar(&r.Down, "slips-down", 250*unit.Kilopound, "force on the casing that the slips bear, down")
	flags.TextVar(&in.seat.Casing, "casing", 8.535*unit.Inch, "bore of the casing")
	flags.TextVar(&in.seat.Bore, "bore", 4.75*unit.Inch, "seal bore of the packer")
	flags.TextVar(&in.below, "below", 6500*unit.PSI, "pressure below the packer")
	flags.TextVar(&in.above, "above", 3500*unit.PSI, "pressure above the packer")
	flags.TextVar(&in.tubing, "tubing", 75*unit.Kilopound, "force of the tubing on the packer, positive where it pulls up")
	flags.Float64Var(&in.hand, "in-hand", 0.1, "share of a test pressure to keep in hand")
	return func() (calculator.Answer, error) { return in.answer() }
}

func (in inputs) answer() (calculator.Answer, error) {
	bearing := in.seat.Bearing(in.tubing, in.below, in.above)
	if !(in.hand >= 0 && in.hand <= 1) {
		return calculator.Answer{}, calculator.BadInput{Err: fmt.Errorf("in-hand is %v; it must be from 0 to 1", in.hand)}
	}
	polygon, loads, err := in.read(bearing.Load)
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	e, err := polygon.Envelope()
	if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{Steps: bearing.Steps()}
	corners := calculator.Table{Name: "Envelope", Header: []string{"differential, below minus above", "axial, tubing on packer", "then along"}}
	for i, v := range polygon.Vertices {
		limit := ""
		if len(polygon.Limits) > 0 {
			limit = polygon.Limits[i]
		}
		corners.Rows = append(corners.Rows, []any{v.Differential, v.Axial, limit})
	}
	table := calculator.Table{Name: "Loads", Header: []string{"load", "differential", "axial", "held", "share used", "limit", "distance to the edge", "nearest edge at", ""}}
	for _, l := range loads {
		m := e.Margin(packer.Load{Differential: l.Differential, Axial: l.Axial})
		table.Rows = append(table.Rows, []any{l.Name, l.Differential, l.Axial, m.Inside(), m.Used, m.Limit, m.Distance, m.Nearest.Differential, m.Nearest.Axial})
		if !m.Inside() {
			a.Failed = true
			a.Notes = append(a.Notes, fmt.Sprintf("%s is outside the envelope: %s", l.Name, m.NearestLimit))
		}
	}
	a.Tables = []calculator.Table{corners, table}
	a.Results = []calculator.Result{{Name: "force of the packer on the casing, positive up", Value: bearing.Casing}}
	above, below, err := e.Tests(in.tubing, in.hand)
	if err != nil {
		a.Notes, a.Failed = append(a.Notes, err.Error()), true
	} else {
		a.Results = append(a.Results,
			calculator.Result{Name: "test from above, with the tubing's force and the share in hand", Value: above},
			calculator.Result{Name: "test from below", Value: below})
	}
	a.Notes = append(a.Notes, "distances are in half the envelope's span of each load; positive is inside")
	a.Draw = func(w io.Writer) error { return picture(w, polygon, loads) }
	return a, nil
}

// read returns the envelope's corners and the loads, those of the flags first.
func (in inputs) read(own packer.Load) (packer.Polygon, []namedLoad, error) {
	loads := []namedLoad{{"load", own.Differential, own.Axial}}
	if !(in.seat.Casing > in.seat.Bore && in.seat.Bore > 0) {
		return packer.Polygon{}, nil, fmt.Errorf("casing is %v and bore %v; want a casing larger than the seal bore, both above 0", in.seat.Casing, in.seat.Bore)
	}
	if in.loads != "" {
		text, err := os.ReadFile(in.loads)
		if err != nil {
			return packer.Polygon{}, nil, err
		}
		var more []namedLoad
		if err := strictjson.Unmarshal(text, &more); err != nil {
			return packer.Polygon{}, nil, fmt.Errorf("%s: %w", in.loads, err)
		}
		loads = append(loads, more...)
	}
	if in.file == "" {
		in.ratings.Area = tubular.AnnularCapacity(in.seat.Casing, in.seat.Bore)
		p, err := in.ratings.Polygon()
		return p, loads, err
	}
	f, err := os.Open(in.file)
	if err != nil {
		return packer.Polygon{}, nil, err
	}
	defer f.Close()
	p, err := packer.ReadPolygon(f)
	return p, loads, err
}
