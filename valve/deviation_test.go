package valve

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

// Deviations widen a ramp at both ends, for rising and falling triggers.
func TestMarginsWithDeviation(t *testing.T) {
	off := band[unit.Pressure](-2, 0, 5)
	rise := Row{{Threshold: band[unit.Pressure](100, 110, 120)}}
	o := rise.RampWithin(TriggerState{}, 0, 90, off)
	require.Equal(t, Margin{Near: 90 + 5 - 100, Far: 90 - 2 - 120}, o.Margin)
	require.Equal(t, CannotFire, o.Verdict)
	require.Equal(t, CannotFire, rise.RampWithin(TriggerState{}, 0, 94, off).Verdict)
	require.Equal(t, MayFire, rise.RampWithin(TriggerState{}, 0, 95, off).Verdict)
	require.Equal(t, MayFire, rise.RampWithin(TriggerState{}, 0, 121, off).Verdict)
	require.Equal(t, MustFire, rise.RampWithin(TriggerState{}, 0, 122, off).Verdict)
	fall := Row{{Threshold: band[unit.Pressure](-120, -110, -100), Direction: Falling}}
	o = fall.RampWithin(TriggerState{}, 0, -90, off)
	require.Equal(t, Margin{Near: -100 + 90 + 2, Far: -120 + 90 - 5}, o.Margin)
	require.Equal(t, CannotFire, fall.RampWithin(TriggerState{}, 0, -97, off).Verdict)
	require.Equal(t, MayFire, fall.RampWithin(TriggerState{}, 0, -98, off).Verdict)
	require.Equal(t, MayFire, fall.RampWithin(TriggerState{}, 0, -124, off).Verdict)
	require.Equal(t, MustFire, fall.RampWithin(TriggerState{}, 0, -125, off).Verdict)

	// what was seen before, with and without deviations
	s := rise.Ramp(TriggerState{}, 0, 110).State
	require.Equal(t, MayHaveFired, rise.Ramp(s, 0, 110).Verdict)
	require.Equal(t, MayFire, rise.Ramp(s, 0, 110.001).Verdict)
	require.Equal(t, MayFire, rise.RampWithin(s, 0, 110, off).Verdict, "known less exactly than before")
	s = rise.RampWithin(TriggerState{}, 0, 110, off).State
	require.Equal(t, MayFire, rise.Ramp(s, 0, 105).Verdict, "seen less exactly before")
	require.Equal(t, MayHaveFired, rise.Ramp(s, 0, 99).Verdict, "short of every threshold")
	s = rise.Ramp(s, 0, 111).State
	require.Equal(t, MayFire, rise.Ramp(s, 0, 111).Verdict, "what was once seen less exactly stays so")
	low, high, ok := s.Seen()
	require.Equal(t, []any{unit.Pressure(-2), unit.Pressure(115), true}, []any{low, high, ok})
	f := fall.Ramp(TriggerState{}, 0, -110).State
	require.Equal(t, MayHaveFired, fall.Ramp(f, 0, -110).Verdict)
	require.Equal(t, MayFire, fall.Ramp(f, 0, -110.001).Verdict)
	twice := Row{{Threshold: band[unit.Pressure](100, 110, 120), Rearm: band[unit.Pressure](10, 10, 10), Count: 2}}
	c := twice.Ramp(twice.Ramp(twice.Ramp(TriggerState{}, 0, 110).State, 110, 0).State, 0, 110).State
	require.Equal(t, MayFire, twice.Ramp(c, 0, 110).Verdict, "a counted trigger may count again")
	pair := Row{{Threshold: band[unit.Pressure](100, 110, 120)}, {Threshold: band[unit.Pressure](10, 20, 30), Direction: Falling}}
	p := pair.Ramp(pair.Ramp(TriggerState{}, 0, 110).State, 110, 0).State
	require.Equal(t, MayFire, pair.Ramp(p, 0, 110).Verdict, "a row may have come to its next trigger")
}
