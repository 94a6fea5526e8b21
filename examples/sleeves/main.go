// Sleeves tells in what order sliding sleeves on a common close line are shifted,
// what each line gives and takes, and what one wrong line would move.
package main

import (
	"errors"
	"flag"
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/valve"
	"completion.example/valve/controlline"
	"completion.example/valve/sleeve"
)

var command = calculator.Command{
	Name:     "sleeves",
	Question: "in what order are sleeves on a common close line shifted, and what would a wrong line move?",
	Setup:    setup,
}

func main() { calculator.Main(command) }

// list is a flag of values between commas.
type list[T any, P interface {
	*T
	UnmarshalText([]byte) error
}] []T

func (l list[T, P]) String() string {
	var s []string
	for _, v := range l {
		s = append(s, fmt.Sprint(v))
	}
	return strings.Join(s, ", ")
}

func (l *list[T, P]) Set(text string) error {
	var read list[T, P]
	for part := range strings.SplitSeq(text, ",") {
		var v T
		if err := P(&v).UnmarshalText([]byte(strings.TrimSpace(part))); err != nil {
			return err
		}
		read = append(read, v)
	}
	*l = read
	return nil
}

type input struct {
	depths   list[unit.Length, *unit.Length]
	from, to list[sleeve.Position, *sleeve.Position]
	one      sleeve.Sleeve
	line     controlline.Line
	liquid   controlline.Liquid
	pump     unit.Pressure
	single   bool
}

// The sleeves of an invented well.
func setup(flags *flag.FlagSet) func() (calculator.Answer, error) {
	in := input{
		depths: []unit.Length{8200 * unit.Foot, 8500 * unit.Foot, 8800 * unit.Foot},
		from:   []sleeve.Position{sleeve.Open, sleeve.Open, sleeve.Closed},
		to:     []sleeve.Position{sleeve.Closed, sleeve.Open, sleeve.Open},
		line:   controlline.Line{Poisson: 0.3},
	}
	flags.Var(&in.depths, "depths", "true vertical depth of each sleeve; the lines are taken as long as that")
	flags.Var(&in.from, "from", "position of each sleeve now: closed, open or unknown")
	flags.Var(&in.to, "to", "position of each sleeve wanted")
	flags.TextVar(&in.one.OpenArea, "open-area", 2*unit.SquareInch, "piston area on the open line's side")
	flags.TextVar(&in.one.CloseArea, "close-area", 2*unit.SquareInch, "piston area on the close line's side")
	flags.TextVar(&in.one.Stroke, "stroke", 15*unit.Inch, "stroke of a sleeve")
	flags.TextVar(&in.one.Friction, "friction", unit.Band[unit.Force]{Least: 800 * unit.PoundForce, Nominal: 1000 * unit.PoundForce, Greatest: 1200 * unit.PoundForce}, "force that moves a sleeve with no differential across it")
	flags.TextVar(&in.one.Across, "across", unit.Band[unit.Pressure]{Greatest: 1500 * unit.PSI, Nominal: 750 * unit.PSI}, "differential across the sleeves")
	flags.TextVar(&in.one.PerDifferential, "per-differential", 0.2*unit.SquareInch, "friction added per differential")
	flags.TextVar(&in.line.OD, "od", 0.25*unit.Inch, "outside diameter of the lines")
	flags.TextVar(&in.line.Wall, "wall", 0.049*unit.Inch, "wall of the lines")
	flags.TextVar(&in.line.Young, "young", 28e6*unit.PSI, "Young's modulus of the lines")
	flags.TextVar(&in.liquid.Density, "density", 7.26*unit.PoundPerGallon, "density of the control fluid")
	flags.TextVar(&in.liquid.Viscosity, "viscosity", 10*unit.Centipoise, "viscosity of the control fluid")
	flags.TextVar(&in.liquid.Compressibility, "compressibility", 3.8e-6*unit.PerPSI, "compressibility of the control fluid")
	flags.TextVar(&in.pump, "limit", 5000*unit.PSI, "greatest panel pressure: the lesser of pump and lines")
	flags.BoolVar(&in.single, "single", false, "move one sleeve at a time, so that the returns tell which moved")
	return func() (calculator.Answer, error) { return in.answer() }
}

func (in input) system() sleeve.System {
	s := sleeve.System{Liquid: in.liquid}
	deepest := unit.Length(0)
	for i, depth := range in.depths {
		v, l := in.one, in.line
		v.Name, v.Depth, v.Inside, v.Outside = fmt.Sprintf("sleeve %d", i+1), depth, "tubing", fmt.Sprintf("zone %d", i+1)
		l.Length, l.Depth = depth, depth
		deepest = max(deepest, depth)
		s.Sleeves, s.OpenLines = append(s.Sleeves, v), append(s.OpenLines, l)
	}
	s.CloseLine = in.line
	s.CloseLine.Length, s.CloseLine.Depth = deepest, deepest
	return s
}

func (in input) answer() (calculator.Answer, error) {
	s := in.system()
	legs, err := s.Plan(sleeve.Route{From: in.from, To: in.to, Surface: valve.SurfaceRange{Greatest: in.pump}, Single: in.single})
	if errors.Is(err, sleeve.ErrNoRoute) {
		return calculator.Answer{}, err
	} else if err != nil {
		return calculator.Answer{}, calculator.BadInput{Err: err}
	}
	a := calculator.Answer{Results: []calculator.Result{{Name: "actions", Value: fmt.Sprint(len(legs))}}}
	order := calculator.Table{Name: "In this order", Header: []string{"action", "step", "window", "then"}}
	volumes := calculator.Table{Name: "What each line takes (returns negative)", Header: []string{"action", "line", "storage", "swept"}}
	faults := calculator.Table{Name: "One line wrong while under pressure", Header: []string{"action", "line", "is", "instead of", "then"}}
	at := []sleeve.Position(in.from)
	for i, leg := range legs {
		n := fmt.Sprint(i + 1)
		window := leg.Window.Least.Rounded(4) + " to " + leg.Window.Greatest.Rounded(4)
		for _, op := range leg.Operations {
			order.Rows = append(order.Rows, []any{n, s.Describe(op), window, ""})
		}
		order.Rows[len(order.Rows)-1][3] = fmt.Sprint(leg.After)
		signatures, err1 := s.Signatures(at, leg.Action, leg.Pressure)
		wrong, err2 := s.Faults(at, leg.Action, leg.Pressure)
		if err := errors.Join(err1, err2); err != nil {
			return calculator.Answer{}, err
		}
		for _, g := range signatures {
			volumes.Rows = append(volumes.Rows, []any{n, name(g.Line), working.In(g.Storage, unit.Litre, "L"), working.In(g.Swept, unit.Litre, "L")})
		}
		for _, f := range wrong {
			if f.Differs == nil {
				continue
			}
			var then []string
			for _, k := range f.Differs {
				then = append(then, s.Sleeves[k].Name+" "+f.Effects[k].Motion.String())
			}
			faults.Rows = append(faults.Rows, []any{n, name(f.Line), f.Actual.String(), f.Planned.String(), strings.Join(then, ", ")})
		}
		at = leg.After
	}
	if legs != nil {
		a.Tables = append(a.Tables, order, volumes, faults)
	}
	certain, _, err := s.Joined(at)
	if err != nil {
		return calculator.Answer{}, err
	}
	for _, group := range certain {
		a.Results = append(a.Results, calculator.Result{Name: "joined at the end", Value: strings.Join(group, " + ")})
	}
	x, err := s.Shifting(0)
	if err != nil {
		return calculator.Answer{}, err
	}
	a.Results = append(a.Results, calculator.Result{Name: "panel pressure that opens sleeve 1", Value: x.Open}, calculator.Result{Name: "panel pressure that closes it", Value: x.Close})
	a.Steps = x.Steps()
	return a, nil
}

func name(line int) string {
	if line == sleeve.CloseLine {
		return "close line"
	}
	return fmt.Sprintf("open line of sleeve %d", line+1)
}
