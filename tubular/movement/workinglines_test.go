package movement_test

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/hydrostatics/working"
	"completion.example/hydrostatics/working/workingtest"
	"completion.example/tubular/movement"
	"github.com/stretchr/testify/require"
)

// part is a mark of an assembly as its maker sees it.
type part struct {
	kind  string // seal, held place, joint, plug, hung
	index int
	md    unit.Length
	ends  bool // it holds, stops or has parted
}

func (p part) name() string {
	if p.kind == "plug" || p.kind == "hung" {
		return p.md.Rounded(6)
	}
	return p.kind + " " + strconv.Itoa(p.index+1)
}

func parts(x *scene) []part {
	var all []part
	for i, s := range x.assembly.Seals {
		all = append(all, part{"seal", i, s.MD, x.loading.Seals[i].Stands || x.loading.Seals[i].Pulls})
	}
	for i, h := range x.assembly.Holds {
		all = append(all, part{"held place", i, h.MD, x.standing.Holds(i)})
	}
	for i, j := range x.assembly.Joints {
		all = append(all, part{"joint", i, j.MD, x.standing.Parted(i)})
	}
	for i, md := range x.assembly.Plugs {
		all = append(all, part{"plug", i, md, false})
	}
	for i, md := range x.assembly.Hung {
		all = append(all, part{"hung", i, md, false})
	}
	slices.SortFunc(all, func(a, b part) int { return cmp.Compare(a.md, b.md) })
	return all
}

// lines are the names of the lines that a working must have of the string's lengths and parts, in order.
func lines(x *scene) []string {
	l, hook := &x.loading, x.last.Top != movement.AtHanger
	all := parts(x)
	var of, want []string
	upper := part{kind: "top", md: x.assembly.Hanger}
	gone := false
	for i := range all {
		lower := &all[i]
		if !lower.ends {
			continue
		}
		if lower.kind != "joint" {
			gone = false
			where := "the lower end"
			if slices.ContainsFunc(all[i+1:], func(p part) bool { return p.kind == "joint" && p.ends }) {
				where = "what a joint left"
			} else {
				want = append(want, "wall force at the lower end")
			}
			want = append(want, "wall force above "+lower.name()+" if nothing held it, from "+where+" up")
			switch {
			case upper.kind == "top" && hook:
				want = append(want, "force that the hook adds")
			case upper.kind == "joint":
				want = append(want, "force below "+upper.name()+", which has parted")
			default:
				want = append(want, "force that keeps the length from "+upper.md.Rounded(6)+" to "+lower.md.Rounded(6))
			}
			want = append(want, "wall force above "+lower.name())
		}
		upper = *lower
	}
	end := func(from int) (string, bool) { // the next end below a part, and whether it holds
		for _, p := range all[from+1:] {
			if p.ends {
				return p.name(), p.kind != "joint"
			}
		}
		return "the lower end", false
	}
	for i, p := range all {
		below, holds := end(i)
		if p.ends && p.kind == "joint" {
			gone = !holds
			continue
		}
		if p.ends {
			gone = false
		}
		if gone && !p.ends {
			continue
		}
		switch p.kind {
		case "held place":
			of = append(of, "effective force above "+p.name())
			if p.ends {
				of = append(of, "load on "+p.name()+", up positive")
				if x.assembly.Holds[p.index].Casing > 0 {
					of = append(of, p.name()+" on the casing, up positive")
				}
			}
		case "joint":
			of = append(of, "wall force above "+p.name()+", from "+below+" up", "effective force above "+p.name(), "balance of "+p.name()+", positive where it parts")
		case "seal":
			s, got := x.assembly.Seals[p.index], l.Seals[p.index]
			of = append(of, "ring of "+p.name()+", up positive", "travel of "+p.name()+" since landing, down positive")
			left := s.Up + got.Travel
			if s.Up != 0 && left > 0 && (s.Length == 0 || left < s.Length) {
				of = append(of, "way up that is left to "+p.name())
			}
			if s.Down != 0 {
				of = append(of, "way down that is left to "+p.name())
			}
		}
	}
	return append(want, of...)
}

// varied is a random string with everything that changes which lines its working has.
func varied(t testing.TB, r *rand.Rand) scene {
	a := randomAssembly(t, r)
	end := a.Sections[len(a.Sections)-1].BottomMD
	for range r.IntN(3) {
		a.Seals = append(a.Seals, movement.Seal{MD: unit.Length(0.3+0.7*r.Float64()) * end, Bore: 5 * unit.Inch, Up: unit.Foot, Down: 6 * unit.Inch, Friction: 900 * unit.PoundForce})
	}
	for i := range a.Seals {
		s := &a.Seals[i]
		s.Locator, s.Latch = r.IntN(2) == 0, r.IntN(3) == 0
		if r.IntN(3) == 0 {
			s.Up = 0
		}
		if r.IntN(3) == 0 {
			s.Down = 0
		}
		if r.IntN(2) == 0 {
			s.Length = s.Up + unit.Length(r.Float64())*unit.Foot
		}
	}
	for i := range a.Holds {
		if r.IntN(2) == 0 {
			a.Holds[i].Casing = 0
		}
	}
	m := made(t, a)
	s := randomStanding(t, r, m, a, 2)
	c := randomConditions(r, m, a)
	if r.IntN(4) == 0 {
		c.Hung = nil
	}
	if r.IntN(2) == 0 {
		c.Top, c.Reading, c.Drag = movement.OnHookOpen, unit.Force(50000+r.Float64()*100000)*unit.PoundForce, unit.Force(r.Float64()*8000)*unit.PoundForce
		if r.IntN(2) == 0 {
			c.Drag = 0
		}
		if r.IntN(3) == 0 {
			c.Sliding = movement.Sliding(r.IntN(3) - 1)
		}
		if r.IntN(2) == 0 {
			c.DragShare = func(md unit.Length) float64 { return 1 - 0.7*float64(md/end) } // some of it comes all the way
		}
	}
	l, err := m.Load(s, c)
	require.NoError(t, err)
	return scene{a, m, s, c, l}
}

// A working has a line for every length that is held, and for every part, and none for what is gone; every line is in
// balance; and seals stand on nothing that doesn't bear them.
func TestTheWorkingHasALineForEverything(t *testing.T) {
	r := rand.New(rand.NewPCG(84, 20))
	stands, pulls := 0, 0
	for k := range 600 {
		x := varied(t, r)
		steps := x.made.Steps(&x.loading)
		workingtest.Check(t, slices.DeleteFunc(slices.Clone(steps), func(s working.Step) bool {
			return strings.HasPrefix(s.Name, "travel of ") && s.Value.SI() == 0 // on its stop: all that is left is rounding
		}))
		first := slices.IndexFunc(steps, func(s working.Step) bool { return s.Symbol == "R" })
		if x.last.Top == movement.AtHanger {
			first = slices.IndexFunc(steps, func(s working.Step) bool { return s.Symbol == "L" })
		}
		last := slices.IndexFunc(steps, func(s working.Step) bool { return strings.HasPrefix(s.Name, "movement of the lower end") })
		var got []string
		for _, s := range steps[first+1 : last] {
			got = append(got, s.Name)
		}
		require.Equal(t, lines(&x), got, "scene %d", k)

		for i, s := range x.loading.Seals {
			made := x.assembly.Seals[i]
			if s.Lost {
				continue
			}
			require.InDelta(t, float64(made.Down-s.Travel), float64(s.ToShoulder), 1e-12)
			engaged := max(0, made.Up+s.Travel)
			if made.Length > 0 {
				engaged = min(engaged, made.Length)
			}
			require.Equal(t, engaged, s.Engaged)
			if x.last.Sliding != movement.NotSliding || x.last.Drag != 0 {
				continue // within its friction a string may stand on a stop or not
			}
			if s.Stands {
				stands++
				require.LessOrEqual(t, s.Load, unit.Force(0))
			}
			if s.Pulls {
				pulls++
				require.GreaterOrEqual(t, s.Load, unit.Force(0))
			}
			if made.Locator && !x.loading.Free {
				require.GreaterOrEqual(t, s.ToShoulder, unit.Length(-1e-9), "scene %d", k)
			}
			if made.Latch && !x.loading.Free {
				require.GreaterOrEqual(t, made.Up+s.Travel, unit.Length(-1e-9), "scene %d", k)
			}
		}
		for i, h := range x.loading.Holds {
			if x.assembly.Holds[i].Casing == 0 {
				require.Zero(t, h.Casing, "its casing isn't known")
			}
		}
		for _, n := range x.loading.Nodes {
			if x.loading.Lost > 0 && n.MD > x.loading.Lost && !slices.ContainsFunc(parts(&x), func(p part) bool { return p.ends && p.kind != "joint" && p.md > x.loading.Lost }) {
				require.Zero(t, n.True)
				require.Zero(t, n.Effective)
			}
		}
	}
	require.Greater(t, stands, 30)
	require.Greater(t, pulls, 20)
}
