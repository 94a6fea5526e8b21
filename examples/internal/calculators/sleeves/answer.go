package sleeves

import (
	"completion.example/hydrostatics/unit/display"
	"errors"
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/internal/calculator"
	"completion.example/valve"
	"completion.example/valve/sleeve"
)

func (in input) system() sleeve.System {
	s := sleeve.System{Liquid: in.liquid}
	longest, deepest := unit.Length(0), unit.Length(0)
	for i, depth := range in.depths {
		v, l := in.one, in.line
		v.Name, v.TVD, v.Inside, v.Outside = fmt.Sprintf("sleeve %d", i+1), depth, "tubing", fmt.Sprintf("zone %d", i+1)
		l.Length, l.TVD = in.lengths[i], depth
		longest, deepest = max(longest, l.Length), max(deepest, depth)
		s.Sleeves, s.OpenLines = append(s.Sleeves, v), append(s.OpenLines, l)
	}
	s.CloseLine = in.line
	s.CloseLine.Length, s.CloseLine.TVD = longest, deepest
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
		window := in.units.Format(leg.Window.Least, display.Usual) + " to " + in.units.Format(leg.Window.Greatest, display.Usual)
		for _, op := range leg.Operations {
			row := []any{n, s.Describe(op), "", ""}
			if op.Setting.Mode == sleeve.Pressured {
				row[2] = window
			}
			order.Rows = append(order.Rows, row)
		}
		order.Rows[len(order.Rows)-1][3] = where(s, leg.After)
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
	if in.table {
		t, err := in.combinations(s)
		if err != nil {
			return calculator.Answer{}, err
		}
		a.Tables = append(a.Tables, t)
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

// combinations lists what every setting of the lines moves, at the greatest panel
// pressure.
func (in input) combinations(s sleeve.System) (calculator.Table, error) {
	t := calculator.Table{Name: "Every combination of lines at " + in.units.Format(in.pump, display.Usual), Header: []string{"pressured", "moves"}}
	table, err := s.Combinations(in.from, in.pump)
	for _, c := range table {
		var lines, moves []string
		if c.Panel.Close.Mode == sleeve.Pressured {
			lines = append(lines, name(sleeve.CloseLine))
		}
		for i, e := range c.Effects {
			if c.Panel.Open[i].Mode == sleeve.Pressured {
				lines = append(lines, name(i))
			}
			if e.Motion != sleeve.Stays {
				moves = append(moves, e.Name+" "+e.Motion.String())
			}
		}
		t.Rows = append(t.Rows, []any{orNothing(strings.Join(lines, " + ")), orNothing(strings.Join(moves, ", "))})
	}
	return t, err
}

func orNothing(s string) string {
	if s == "" {
		return "nothing"
	}
	return s
}

func name(line int) string {
	if line == sleeve.CloseLine {
		return "close line"
	}
	return fmt.Sprintf("open line of sleeve %d", line+1)
}

// where says where every sleeve is.
func where(s sleeve.System, at []sleeve.Position) string {
	words := make([]string, len(at))
	for i, p := range at {
		words[i] = s.Sleeves[i].Name + " " + p.String()
	}
	return strings.Join(words, ", ")
}
