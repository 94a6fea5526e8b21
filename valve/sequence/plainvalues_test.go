package sequence_test

import (
	"maps"
	"math/rand/v2"
	"slices"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// What the plain walker reads of a plan's uncertain values, each in one place:
// the nominal of its band.

func plainDensity(f sequence.Fluid) float64       { return f.Density.Nominal.In(ppg) }
func plainPore(f sequence.Formation) float64      { return f.Pressure.Nominal.In(psi) }
func plainFracture(f sequence.Formation) float64  { return f.Fracture.Nominal.In(psi) }
func plainTrapped(c sequence.Compartment) float64 { return c.Trapped.Nominal.In(psi) }
func plainGauge(p *sequence.Plan) float64         { return p.Rules.Gauge.Nominal.In(psi) }

// How the maker of random plans writes them.

func setDensity(f *sequence.Fluid, x float64)       { f.Density = unit.Exactly(unit.Density(x) * ppg) }
func setPore(f *sequence.Formation, x float64)      { f.Pressure = exactly(x) }
func setFracture(f *sequence.Formation, x float64)  { f.Fracture = exactly(x) }
func setTrapped(c *sequence.Compartment, x float64) { c.Trapped = exactly(x) }

func exactly(x float64) unit.Band[pressure] { return unit.Exactly(pounds(x)) }

// bandKind says what a band is of.
type bandKind int

const (
	thresholdBand bandKind = iota
	rearmBand
	densityBand
	poreBand
	fractureBand
	trappedBand
	ratingBand
	gaugeBand
	forceBand
	heldBand
)

// plainBand is a band in SI, whatever it is of.
type plainBand struct{ least, nominal, greatest float64 }

func visitBand[Q unit.Scalar](kind bandKind, b *unit.Band[Q], visit func(bandKind, plainBand) plainBand) {
	x := visit(kind, plainBand{float64(b.Least), float64(b.Nominal), float64(b.Greatest)})
	*b = unit.Band[Q]{Least: Q(x.least), Nominal: Q(x.nominal), Greatest: Q(x.greatest)}
}

// eachBand returns a copy of a plan with every band put through visit, always in
// the same order.
func eachBand(p *sequence.Plan, visit func(bandKind, plainBand) plainBand) *sequence.Plan {
	c := *p
	c.Fluids, c.Formations, c.Compartments = slices.Clone(p.Fluids), slices.Clone(p.Formations), slices.Clone(p.Compartments)
	for i := range c.Fluids {
		visitBand(densityBand, &c.Fluids[i].Density, visit)
	}
	for i := range c.Formations {
		visitBand(poreBand, &c.Formations[i].Pressure, visit)
		visitBand(fractureBand, &c.Formations[i].Fracture, visit)
	}
	for i := range c.Compartments {
		visitBand(trappedBand, &c.Compartments[i].Trapped, visit)
	}
	c.Ratings = slices.Clone(p.Ratings)
	for i := range c.Ratings {
		visitBand(ratingBand, &c.Ratings[i].Burst, visit)
		visitBand(ratingBand, &c.Ratings[i].Collapse, visit)
	}
	visitBand(gaugeBand, &c.Rules.Gauge, visit)
	if p.String != nil {
		s := *p.String
		visitBand(forceBand, &s.Drag, visit)
		visitSeals(&s, visit)
		c.String = &s
	}
	if p.OuterString != nil {
		s := *p.OuterString
		visitBand(forceBand, &s.Drag, visit)
		visitSeals(&s, visit)
		c.OuterString = &s
	}
	if p.Begin != nil {
		b := *p.Begin
		b.Trapped = map[string]*sequence.Stated{}
		for _, name := range slices.Sorted(maps.Keys(p.Begin.Trapped)) {
			s := *p.Begin.Trapped[name]
			visitBand(trappedBand, &s.Pressure, visit)
			b.Trapped[name] = &s
		}
		b.Levels = map[string]*sequence.StatedDepth{}
		for _, name := range slices.Sorted(maps.Keys(p.Begin.Levels)) {
			s := *p.Begin.Levels[name]
			if s.Lacks != nil {
				x := *s.Lacks
				visitBand(trappedBand, &x.Pressure, visit)
				s.Lacks = &x
			} else {
				visitBand(heldBand, &s.Depth, visit)
			}
			b.Levels[name] = &s
		}
		c.Begin = &b
	}
	c.Steps = slices.Clone(p.Steps)
	for i := range c.Steps {
		tests := slices.Clone(c.Steps[i].Tests)
		for k := range tests {
			if tests[k].Warms == nil {
				continue
			}
			warms := map[string]unit.Band[unit.TemperatureDifference]{}
			for _, name := range slices.Sorted(maps.Keys(tests[k].Warms)) {
				b := tests[k].Warms[name]
				visitBand(heldBand, &b, visit)
				warms[name] = b
			}
			tests[k].Warms = warms
		}
		c.Steps[i].Tests = tests
	}
	c.Devices = slices.Clone(p.Devices)
	for d := range c.Devices {
		actions := slices.Clone(c.Devices[d].Actions)
		c.Devices[d].Actions = actions
		for a := range actions {
			actions[a].Triggers = slices.Clone(actions[a].Triggers)
			for k := range actions[a].Triggers {
				if actions[a].Areas == nil {
					visitTrigger(&actions[a].Triggers[k], visit)
				}
			}
			actions[a].Areas = visitAreas(actions[a].Areas, visit)
			for _, list := range []*[]sequence.Condition{&actions[a].All, &actions[a].Any} {
				*list = slices.Clone(*list)
				for n := range *list {
					c := &(*list)[n]
					c.Triggers = slices.Clone(c.Triggers)
					for k := range c.Triggers {
						if c.Areas == nil {
							visitTrigger(&c.Triggers[k], visit)
						}
					}
					c.Areas = visitAreas(c.Areas, visit)
				}
			}
		}
	}
	return &c
}

func visitSeals(s *sequence.String, visit func(bandKind, plainBand) plainBand) {
	s.Seals = slices.Clone(s.Seals)
	for i := range s.Seals {
		if s.Seals[i].Friction.Nominal != 0 {
			visitBand(forceBand, &s.Seals[i].Friction, visit)
		}
	}
}

func visitAreas(x *sequence.Areas, visit func(bandKind, plainBand) plainBand) *sequence.Areas {
	if x == nil {
		return nil
	}
	y := *x
	visitBand(forceBand, &y.Spring, visit)
	visitBand(forceBand, &y.Friction, visit)
	return &y
}

func visitTrigger(t *sequence.Trigger, visit func(bandKind, plainBand) plainBand) {
	if t.Pins != nil {
		x := float64(t.Pins.Count) * float64(t.Pins.Strength) / float64(t.Pins.Area)
		d := x * t.Pins.Tolerance
		t.Threshold, t.Pins = unit.Band[pressure]{Least: pressure(x - d), Nominal: pressure(x), Greatest: pressure(x + d)}, nil
	}
	if t.Tension.Nominal != 0 {
		visitBand(forceBand, &t.Tension, visit)
		return
	}
	visitBand(thresholdBand, &t.Threshold, visit)
	if t.Count > 1 {
		visitBand(rearmBand, &t.Rearm, visit)
	}
}

// sharp returns a plan with one value in place of each band.
func sharp(p *sequence.Plan, choose func(plainBand) float64) *sequence.Plan {
	return eachBand(p, func(_ bandKind, b plainBand) plainBand {
		x := b.nominal
		if b.least < b.greatest {
			x = choose(b)
		}
		return plainBand{x, x, x}
	})
}

// drawValues draws one value of each band: of even draws every one is an end of
// its band; of the others all lie anywhere in their bands, or some here and some
// there, and every other time of these levels stand where others do.
func drawValues(p *sequence.Plan, random *rand.Rand, draw int) *sequence.Plan {
	anywhere := func(b plainBand) float64 { return b.least + (b.greatest-b.least)*random.Float64() }
	end := func(b plainBand) float64 {
		if random.IntN(2) == 0 {
			return b.least
		}
		return b.greatest
	}
	switch {
	case draw%2 == 0:
		return sharp(p, end)
	case draw%4 == 1:
		return sharp(p, anywhere)
	}
	mixed := func(b plainBand) float64 {
		switch random.IntN(5) {
		case 0, 1:
			return end(b)
		case 2:
			return b.nominal
		}
		return anywhere(b)
	}
	if draw%8 == 3 {
		return sharp(p, mixed)
	}
	return tied(p, random, mixed)
}

// tied draws a plan in which levels stand where others do, where their bands allow it:
// what then comes at the same pressure may come in either order.
func tied(p *sequence.Plan, random *rand.Rand, choose func(plainBand) float64) *sequence.Plan {
	var levels []float64
	eachBand(p, func(kind bandKind, b plainBand) plainBand {
		if kind == thresholdBand && b.least == b.greatest {
			levels = append(levels, b.nominal)
		}
		return b
	})
	return eachBand(p, func(kind bandKind, b plainBand) plainBand {
		x := b.nominal
		if b.least < b.greatest {
			x = choose(b)
		}
		if kind == thresholdBand && b.least < b.greatest {
			for _, l := range levels {
				if l >= b.least && l <= b.greatest && random.IntN(2) == 0 {
					x = l
				}
			}
			levels = append(levels, x)
		}
		return plainBand{x, x, x}
	})
}

// plainOrders walks a sharp plan in every order in which what is due at once may
// happen, up to a number of walks, and returns the first that fails, or the
// first.
func plainOrders(p *sequence.Plan, samples, most int) *plainResult {
	return plainOrdersUntil(p, samples, most, func(r *plainResult) bool { return !r.ok() })
}

func plainOrdersUntil(p *sequence.Plan, samples, most int, enough func(*plainResult) bool) *plainResult {
	leading := 0 // choices of how the well stood at the beginning
	if b := p.Begin; b != nil {
		leading = len(b.Progress) + len(b.May)
	}
	var first *plainResult
	var start []int
	random := newRandom(uint64(most), 5)
	for left := most; left > 0; {
		if most >= 1000 && left <= most/2 { // too many to go through one after the other: some here, some there
			script := make([]int, 200)
			for k := range script {
				script[k] = random.IntN(3)
			}
			left--
			if r := plainWalkOf(p, samples, script); enough(r) {
				r.close = r.close || first.close
				return r
			}
			continue
		}
		script, ways := start, 1
		var begun []int
		for tried := 0; left > 0 && (most < 1000 || left > most/2) && (leading == 0 || tried < max(most/ways, 3)); tried++ {
			left--
			r := plainWalkOf(p, samples, script)
			if first == nil {
				first = r
			}
			if enough(r) {
				r.close = r.close || first.close
				return r
			}
			begun, ways = r.choices[:min(leading, len(r.choices))], 1
			for _, n := range begun {
				ways *= n
			}
			if script = nextScript(script, r.choices, leading); script == nil {
				break
			}
		}
		if start = nextScript(start, begun, 0); start == nil && (script == nil || leading > 0 || most < 1000) {
			break
		}
	}
	return first
}

// nextScript turns to the next order with the same first choices; nil after the last.
func nextScript(script, choices []int, same int) []int {
	next := make([]int, len(choices))
	copy(next, script)
	for k := len(choices) - 1; k >= same; k-- {
		if next[k]+1 < choices[k] {
			next[k]++
			return next[:k+1]
		}
	}
	return nil
}

func newRandom(seed, n uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, n)) }
