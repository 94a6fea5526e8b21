package sequence

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/judge"
	"completion.example/valve/sequence/internal/walk"
)

// margins are the least of every limit over the whole programme, tightest first:
// triggers, ratings, string, formations, balances, tests.
func (k *checker) margins() []Margin {
	best := map[string]marginAt{}
	keep := func(m marginAt) { // called step by step: of equal ones the first stays
		name := string(m.Kind) + m.Limit
		if old, ok := best[name]; !ok || rank(m.Margin) < rank(old.Margin) {
			best[name] = m
		}
	}
	for i := range k.plan.Steps {
		for n := range k.Network.Actions {
			k.triggerMargins(i, n, keep)
		}
	}
	keys := slices.SortedStableFunc(maps.Keys(k.out.Judge.Margins), func(a, b judge.Key) int {
		return cmp.Or(a.Step-b.Step, cmp.Compare(a.Kind, b.Kind), a.Index-b.Index)
	})
	for _, key := range keys {
		m := k.out.Judge.Margins[key]
		if x, ok := k.limitMargin(m); ok {
			x.point, x.form = m.Point, m.Form
			keep(x)
		}
	}
	all := make([]Margin, 0, len(best))
	for _, m := range best {
		m.At = k.moved(m.point())
		m.Method, m.Left = method(m.form), m.left()
		if m.slope != nil {
			m.Slopes = k.slopes(m.form, m.slope)
		}
		all = append(all, m.Margin)
	}
	inOrder(all, func(a, b Margin) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Limit, b.Limit), cmp.Compare(a.Step, b.Step))
	})
	return all
}

// rank puts margins in order; what differs by rounding alone has one rank.
func rank(m Margin) float64 { return math.Round(m.Share * 1e9) }

func (k *checker) triggerMargins(step, action int, keep func(marginAt)) {
	f := k.out.Judge.SensedBy(step, action)
	if !f.Seen {
		return
	}
	a := &k.Network.Actions[action]
	name := k.plan.Steps[step].Name
	of := func(kind Kind, x float64, form affine.Form, at []float64, level0 float64) {
		if math.IsInf(x, 0) {
			return
		}
		keep(marginAt{Margin: Margin{Limit: a.Name, Kind: kind, Step: name, Share: x / math.Abs(level0)},
			form: form, point: func() []float64 { return at },
			left: func() string { return level(a.Axial, x).Rounded(digits) }, slope: func(d float64) string { return level(a.Axial, d).Rounded(3) }})
	}
	if k.expected(step, a.Name) {
		if f.HasReach {
			of(Missing, f.Reach, f.ReachForm, f.ReachPoint, a.Row[min(f.ReachLink, len(a.Row)-1)].Level.C)
		}
		return
	}
	of(Unintended, f.Left, f.LeftForm, f.Point, f.Level.C)
}

// marginAt is a margin with what its words are made of: most aren't the least of their
// limit, and nobody reads those.
type marginAt struct {
	Margin
	form  affine.Form
	point func() []float64     // the choice that attains it
	left  func() string        // what is left
	slope func(float64) string // a difference of the form
}

func method(f affine.Form) Method {
	if f.R > 0 {
		return Enclosed
	}
	return Exact
}

// moved are the values of a choice that aren't nominal.
func (k *checker) moved(e []float64) []Choice {
	if e == nil {
		return nil
	}
	var all []Choice
	for n, c := range k.choices(e) {
		if d := e[n] - k.Network.Symbols[n].Nominal; d > 1e-9 || d < -1e-9 {
			all = append(all, c)
		}
	}
	return all
}

// slopes are what the inputs take of a margin by their whole bands, most first.
func (k *checker) slopes(f affine.Form, text func(float64) string) []Slope {
	terms := slices.Clone(f.T)
	inOrder(terms, func(a, b affine.Term) int { return cmp.Compare(math.Abs(b.C), math.Abs(a.C)) })
	var all []Slope
	for _, t := range terms[:min(3, len(terms))] {
		all = append(all, Slope{k.Network.Symbols[t.Symbol].Name, text(2 * math.Abs(t.C))})
	}
	return all
}

// limitMargin is a margin of the judge for people; false for those that have no
// size.
func (k *checker) limitMargin(m *judge.Margin) (marginAt, bool) {
	x := marginAt{Margin: Margin{Step: k.plan.Steps[m.Step].Name, Place: k.place(m)}}
	if math.IsInf(m.Least, 0) || math.IsNaN(m.Least) {
		return x, false
	}
	pressure := func(kind Kind, name string, of float64) (marginAt, bool) {
		x.Kind, x.Limit, x.Share = kind, name, m.Least/math.Abs(of)
		x.left = func() string { return psi(unit.Pressure(m.Least)) }
		x.slope = func(d float64) string { return unit.Pressure(d).Rounded(3) }
		return x, of != 0
	}
	share := func(kind Kind, name string) (marginAt, bool) {
		x.Kind, x.Limit, x.Share = kind, name, m.Least/judge.Parts
		x.left = func() string { return fmt.Sprintf("%.1f %%", 100*m.Least/judge.Parts) }
		x.slope = func(d float64) string { return fmt.Sprintf("%.2g %%", 100*d/judge.Parts) }
		return x, true
	}
	switch m.Kind {
	case judge.Inside:
		return pressure(RatingCross, k.nameOf(m)+", from inside", k.Limits.Ratings[m.Index].Burst.C)
	case judge.Outside:
		return pressure(RatingCross, k.nameOf(m)+", from outside", k.Limits.Ratings[m.Index].Collapse.C)
	case judge.Fracture:
		return pressure(Fracture, k.nameOf(m), k.Network.Formations[m.Index].Fracture.C)
	case judge.TestLow, judge.TestHigh:
		t := k.plan.Steps[m.Step].Tests[m.Index]
		return pressure(TestOff, t.Barrier+" from "+t.Side, max(math.Abs(float64(t.Differential.Greatest)), walk.Reach))
	case judge.Held:
		t := k.plan.Steps[m.Step].Tests[m.Index]
		return pressure(TestOff, t.Barrier+" from "+t.Side+", held", max(math.Abs(float64(t.Differential.Nominal))*t.Decline, walk.Reach))
	case judge.BalanceLow, judge.BalanceHigh:
		b := k.plan.Steps[m.Step].Balance[m.Index]
		return pressure(BalanceOff, b.Compartment+" against "+b.Formation, max(math.Abs(float64(b.Overbalance.Greatest)), math.Abs(float64(b.Overbalance.Least)), walk.Reach))
	case judge.ByHand:
		name, of := k.handMargin(m)
		return pressure(ByHand, name, of)
	case judge.String:
		own, index := k.plan.whose(m.Index)
		return share(StringLoad, limitNames[index]+own.ofOuter())
	case judge.Holding:
		return share(HoldingOff, "packer")
	case judge.SealUp, judge.SealDown:
		own, index := k.plan.whose(m.Index)
		s := own.seals()[index]
		way, of := "up", s.Up
		if m.Kind == judge.SealDown {
			way, of = "down", s.Down
		}
		left := unit.Length(m.Least / judge.Parts)
		x.Kind, x.Limit, x.Share = SealTravel, s.name(index)+", "+way, float64(left/max(of, unit.Inch))
		x.left = func() string { return fmt.Sprintf("%.1f in", left.In(unit.Inch)) }
		x.slope = func(d float64) string { return unit.Length(d / judge.Parts).Rounded(3) }
		return x, true
	case judge.Rig:
		own, index := k.plan.whose(m.Index)
		x.Kind, x.Limit, x.Share = PullOff, lifts[index]+own.ofOuter(), m.Least/float64(own.most(index))
		x.left = func() string { return unit.Force(m.Least).Rounded(digits) }
		return x, true
	}
	return x, false
}
