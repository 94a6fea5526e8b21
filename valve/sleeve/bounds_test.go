package sleeve

import (
	"math/rand/v2"
	"testing"

	"completion.example/hydrostatics/unit"

	"github.com/stretchr/testify/require"
)

// plant is sleeves of known friction with what their lines hold.
type plant struct {
	System
	heads    []float64
	friction []float64
	at       []int // of steps
	shut     float64
	open     []float64
	lines    lines
}

const steps = 200

// set puts one setting on a line: a blocked one keeps what it holds.
func (p *plant) set(line int, t Setting, keep bool) {
	h, pressure := &p.lines.close, &p.shut
	if line != CloseLine {
		h, pressure = &p.lines.open[line], &p.open[line]
	}
	h.blocked = t.Mode == Blocked
	if !(h.blocked && keep) {
		*pressure = t.held().low
	}
}

// settle moves pistons in small steps, each at its own pace, until none moves any
// more: an independent way to what can happen.
func (p *plant) settle(random *rand.Rand) {
	for still := 0; still < 40; {
		still++
		for _, i := range random.Perm(len(p.at)) {
			if random.IntN(3) == 0 {
				continue
			}
			v := p.Sleeves[i]
			ao, ac := float64(v.OpenArea), float64(v.CloseArea)
			force := (p.open[i]+p.heads[i])*ao - (p.shut+p.heads[i])*ac
			move := 0
			if force >= p.friction[i] && p.at[i] < steps {
				move = 1
			} else if -force >= p.friction[i] && p.at[i] > 0 {
				move = -1
			}
			if move == 0 {
				continue
			}
			still = 0
			p.at[i] += move
			dx := float64(move) * float64(v.Stroke) / steps
			if p.lines.open[i].blocked {
				p.open[i] -= ao * dx / p.softness(p.OpenLines[i])
			}
			if p.lines.close.blocked {
				p.shut += ac * dx / p.softness(p.CloseLine)
			}
		}
	}
}

// build makes one well of the friction band, with sleeves somewhere where their
// position isn't known.
func build(t *testing.T, s System, before []Position, random *rand.Rand) *plant {
	heads, err := s.prepare()
	require.NoError(t, err)
	p := &plant{System: s, heads: heads, friction: make([]float64, len(before)), at: make([]int, len(before)), open: make([]float64, len(before)), lines: s.hold(Panel{})}
	for i, b := range before {
		switch b {
		case Open:
			p.at[i] = steps
		case Unknown:
			p.at[i] = random.IntN(steps + 1)
		}
		f := s.Sleeves[i].Resistance()
		p.friction[i] = float64(f.Least) + random.Float64()*float64(f.Greatest-f.Least)
	}
	return p
}

// randomWell varies lines and areas.
func randomWell(random *rand.Rand) System {
	s := well(3)
	s.CloseLine.Length *= unit.Length(1 + 4*random.Float64())
	for i := range s.Sleeves {
		s.Sleeves[i].CloseArea *= unit.Area(0.95 + 0.1*random.Float64())
		s.OpenLines[i].Length *= unit.Length(1 + 4*random.Float64())
		if random.IntN(3) == 0 {
			s.Sleeves[i].Friction = unit.Exactly(s.Sleeves[i].Friction.Nominal)
		}
	}
	return s
}

func randomSetting(random *rand.Rand) Setting {
	t := Setting{Mode(random.IntN(3)), unit.Pressure(random.IntN(40)*100) * unit.PSI}
	if t.Mode == Blocked && random.IntN(2) == 0 {
		t.Pressure = 0
	}
	return t
}

// holds checks what was said of one sleeve against where it went.
func holds(t *testing.T, e Effect, from, to int) {
	switch e.Motion {
	case Stays:
		require.Equal(t, from, to, "%+v", e)
	case Opens:
		require.Equal(t, steps, to, "%+v", e)
	case Closes:
		require.Equal(t, 0, to, "%+v", e)
	case PartlyOpens, MayOpen:
		require.GreaterOrEqual(t, to, from, "%+v", e)
	case PartlyCloses, MayClose:
		require.LessOrEqual(t, to, from, "%+v", e)
	}
	if e.Motion == PartlyOpens && e.Before == Closed {
		require.Less(t, to, steps, "%+v", e)
	}
	if e.Motion == PartlyCloses && e.Before == Open {
		require.Greater(t, to, 0, "%+v", e)
	}
}

func TestApplyBoundsEveryWell(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 12))
	tally := map[Motion]int{}
	for run := 0; run < 1200; run++ {
		s := randomWell(random)
		before := make([]Position, 3)
		panel := Panel{Close: randomSetting(random), Open: make([]Setting, 3)}
		for i := range before {
			before[i] = Position(random.IntN(3))
			panel.Open[i] = randomSetting(random)
		}
		effects, err := s.Apply(before, panel)
		require.NoError(t, err)
		for try := 0; try < 3; try++ {
			p := build(t, s, before, random)
			p.set(CloseLine, panel.Close, false)
			for i, o := range panel.Open {
				p.set(i, o, false)
			}
			start := append([]int{}, p.at...)
			p.settle(random)
			for i, e := range effects {
				tally[e.Motion]++
				holds(t, e, start[i], p.at[i])
			}
		}
	}
	for m := Stays; m < MayMove; m++ {
		require.Greater(t, tally[m], 20, "%v", m)
	}
}

// Operations one after the other, with lines blocked and unblocked between: what
// was said holds for every well of the band, step by step.
func TestRunBoundsEveryWell(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 14))
	tally := map[Motion]int{}
	for run := 0; run < 300; run++ {
		s := randomWell(random)
		before := make([]Position, 3)
		for i := range before {
			before[i] = Position(random.IntN(2))
		}
		var ops []Operation
		for range 8 {
			ops = append(ops, Operation{random.IntN(4) - 1, randomSetting(random)})
		}
		done, _, err := s.Run(before, ops, nil)
		require.NoError(t, err)
		for try := 0; try < 3; try++ {
			p := build(t, s, before, random)
			p.settle(random)
			for _, st := range done {
				p.set(st.Operation.Line, st.Operation.Setting, true)
				start := append([]int{}, p.at...)
				p.settle(random)
				for i, e := range st.Effects {
					tally[e.Motion]++
					holds(t, e, start[i], p.at[i])
				}
			}
		}
	}
	for m := Stays; m < MayMove; m++ {
		require.Greater(t, tally[m], 10, "%v", m)
	}
}
