package sleeve

import (
	"strings"
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/valve"
	"github.com/stretchr/testify/require"
)

// A blocked line comes to rest where the sleeve that gives it volume, or takes it, feels just the least
// resistance: a balance of forces on the piston, worked backwards.
func TestBlockedLinesRestInBalance(t *testing.T) {
	p := piston{ao: 2e-3, ac: 1e-3, stroke: 10, least: 1000, most: 1500, head: 1e5, low: 3e6, high: 3.2e6, gives: 1e9}
	c := closeLine{startLow: 0.4e6, startHigh: 0.5e6, low: 0.4e6, high: 0.5e6, empty: 0.4e6, full: 0.5e6, gives: 1e9}
	c.settle([]piston{p}, []Position{Closed})
	require.InDelta(t, 1000, p.force(3.2e6, c.high), 1e-6, "opening against the close line")
	require.InDelta(t, 0.5e6+1e9*1e-3*10, c.full, 1e-3)
	require.Equal(t, 0.4e6, c.low)

	// and drawn out of it, where pressure left in the close line closes the sleeve
	p.low, p.high = 0, 0.1e6
	c = closeLine{startLow: 7e6, startHigh: 8e6, low: 7e6, high: 8e6, empty: 7e6, full: 8e6, gives: 1e9}
	c.settle([]piston{p}, []Position{Open})
	require.InDelta(t, 1000, -p.force(0, c.low), 1e-6)
	require.InDelta(t, 7e6-1e9*1e-3*10, c.empty, 1e-3)
	require.Equal(t, 8e6, c.high)

	// a second sleeve joins in when the first has raised the line; what both give adds up
	first := piston{ao: 2e-3, ac: 1e-3, stroke: 1e-3, least: 1000, low: 3e6, high: 3e6}
	c = closeLine{startLow: 0, startHigh: 0, gives: 1e9}
	c.settle([]piston{first, first}, []Position{Closed, Closed})
	require.InDelta(t, 2e-3*1e-3*1e9, c.high, 1e-6)

	// the sleeve's own open line, blocked
	c = closeLine{low: 6e6, high: 8e6}
	p.low, p.high = 0.2e6, 0.3e6
	h := p.after(Effect{Motion: PartlyCloses}, &c)
	require.InDelta(t, 1000, -p.force(h.high, 8e6), 1e-6)
	require.Equal(t, 0.2e6, h.low)
	c = closeLine{low: 0.1e6, high: 0.2e6}
	p.low, p.high = 5e6, 6e6
	h = p.after(Effect{Motion: PartlyOpens}, &c)
	require.InDelta(t, 1000, p.force(h.low, 0.1e6), 1e-6)
	require.Equal(t, 6e6, h.high)
	p.gives = 1e6
	give := 2e-3 * 10 * 1e6
	require.Equal(t, held{5e6 - give, 6e6 - give, true}, p.after(Effect{Motion: Opens}, &c))
	require.Equal(t, held{5e6 + give, 6e6 + give, true}, p.after(Effect{Motion: Closes}, &c))
}

// Sleeves are numbered from nought; a step and its effects are told in order.
func TestNumbersOfSleeves(t *testing.T) {
	s := well(3)
	for _, i := range []int{-1, 3} {
		_, err := s.Shifting(i)
		require.ErrorContains(t, err, "sleeve: is ")
		require.ErrorContains(t, err, "from 0 to 2")
		_, err = s.PanelWindow([]Position{Closed, Closed, Closed}, Action{Move: []int{i}}, surface)
		require.ErrorContains(t, err, "must be from 0 to 2")
	}
	_, err := s.Shifting(0)
	require.NoError(t, err)
	_, err = s.Shifting(2)
	require.NoError(t, err)
	broken := well(2)
	broken.Liquid.Density = -1
	_, err = broken.Shifting(0)
	require.ErrorContains(t, err, "Density")
	e := &WrongMoveError{Step: 1, Operation: "opening", Effects: []Effect{{Name: "upper"}, {Name: "lower"}}}
	text := e.Error()
	require.Contains(t, text, "in step 2, opening: upper,")
	require.Equal(t, 1, strings.Count(text, ";"))
	require.Contains(t, text, "; lower,")
	s.Sleeves[0].Across = unit.Exactly(2 * maxPressure)
	require.ErrorContains(t, s.Sleeves[0].Validate(), "must be from "+(-maxPressure).String()+" to "+maxPressure.String())
}

// What the panel's pressure must do to each sleeve, and what it must not: by the ends of the window, and
// the sleeves that set them.
func TestWindowsOfThePanel(t *testing.T) {
	s := well(2)
	far := valve.SurfaceRange{Greatest: 9000 * unit.PSI}
	shifting := func(i int) Shifting {
		x, err := s.Shifting(i)
		require.NoError(t, err)
		return x
	}
	at := func(before []Position, a Action) valve.SurfaceWindow {
		w, err := s.PanelWindow(before, a, far)
		require.NoError(t, err)
		return w
	}
	// opened: its greatest; the other's line is vented and feels nothing
	w := at([]Position{Closed, Closed}, Action{Move: []int{0}})
	require.InEpsilon(t, float64(shifting(0).Open.Greatest), float64(w.Floor.Surface), 1e-12)
	require.Contains(t, w.Floor.Name, "sleeve 1 opening")
	require.Equal(t, far.Greatest, w.Ceiling.Surface)
	// closed: the common line would close the other as well, unless it is held open
	_, err := s.PanelWindow([]Position{Open, Open}, Action{Move: []int{0}, Close: true}, far)
	require.Error(t, err)
	w = at([]Position{Open, Open}, Action{Move: []int{0}, Hold: []int{1}, Close: true})
	require.InEpsilon(t, float64(shifting(0).Close.Greatest), float64(w.Floor.Surface), 1e-12)
	require.Contains(t, w.Floor.Name, "sleeve 1 closing")
	require.Equal(t, far.Greatest, w.Ceiling.Surface)
	// one that may be open or closed has to be opened before it can be held
	w = at([]Position{Open, Unknown}, Action{Move: []int{0}, Hold: []int{1}, Close: true})
	require.GreaterOrEqual(t, w.Floor.Surface, shifting(1).Open.Greatest)
	// with a wider piston on the open side a held sleeve that is closed would be opened by the difference
	s.Sleeves[1].OpenArea *= 1.5
	w = at([]Position{Open, Open}, Action{Move: []int{0}, Hold: []int{1}, Close: true})
	require.Equal(t, far.Greatest, w.Ceiling.Surface, "it is open already")
	w, err = s.PanelWindow([]Position{Open, Closed}, Action{Move: []int{0}, Hold: []int{1}, Close: true}, far)
	if err == nil {
		require.Contains(t, w.Ceiling.Name, "sleeve 2 opening")
	}
	w = at([]Position{Open, Unknown}, Action{Move: []int{0}, Hold: []int{1}, Close: true})
	require.Equal(t, far.Greatest, w.Ceiling.Surface, "what may be closed is opened first, before the difference could")
	// a wider piston on the close side: the difference must not close what is held
	s.Sleeves[1].OpenArea /= 1.5 * 1.08
	w = at([]Position{Open, Unknown}, Action{Move: []int{0}, Hold: []int{1}, Close: true})
	require.Contains(t, w.Ceiling.Name, "sleeve 2 closing")
}
