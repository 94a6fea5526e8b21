package stack_test

import (
	"testing"

	"completion.example/examples/internal/stack"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"github.com/stretchr/testify/require"
)

func TestStack(t *testing.T) {
	var s stack.Stack
	require.NoError(t, s.UnmarshalText([]byte("nitrogen to 3000 ft, 9.2 lb/gal to 7000 ft, seawater to 2500 m")))
	require.Len(t, s, 3)
	require.Equal(t, 2500*unit.Metre, s.Bottom())
	layers := s.Layers(10)
	require.Equal(t, unit.Length(10), layers[0].TopTVD)
	require.Equal(t, 3000*unit.Foot, layers[1].TopTVD)
	require.Equal(t, hydrostatics.Incompressible(9.2*unit.PoundPerGallon), layers[1].Fluid)
	text, err := s.MarshalText()
	require.NoError(t, err)
	var back stack.Stack
	require.NoError(t, back.UnmarshalText(text), "%s", text)
	require.Equal(t, s, back)
	_, err = s.Stretches()
	require.ErrorContains(t, err, "nitrogen has no constant density")
	stretches, err := stack.Default("8.6 lb/gal to 50 ft, 10 lb/gal to 60 ft").Stretches()
	require.NoError(t, err)
	require.Equal(t, []hydrostatics.Stretch{{BottomMD: 50 * unit.Foot, Density: 8.6 * unit.PoundPerGallon}, {BottomMD: 60 * unit.Foot, Density: 10 * unit.PoundPerGallon}}, stretches)
	for _, name := range append(stack.Names(), "CaCl2 11.3 lb/gal", "gas 0.65") {
		f, err := stack.Named(name)
		require.NoError(t, err)
		_, err = f.Density(20*unit.Megapascal, unit.Celsius(30))
		require.NoError(t, err, name)
	}
	for text, want := range map[string]string{
		"": "not FLUID to DEPTH", "water": "not FLUID to DEPTH", "treacle to 5 ft": "is not known", "gas heavy to 5 ft": "no gas gravity", "gas 9 to 5 ft": "must be from 0.57 to 1.68", "CaCl2 9 lb/gal to 5 ft": "must be from", "CaCl2 11 to 5 ft": "no unit given", "water to 5": "no unit given", "water to 5 ft,": "not FLUID to DEPTH",
	} {
		require.ErrorContains(t, s.UnmarshalText([]byte(text)), want, text)
	}
	require.Nil(t, stack.Default("nonsense"))
	require.Zero(t, stack.Stack(nil).Bottom())
}

func FuzzStack(f *testing.F) {
	f.Add("nitrogen to 3000 ft, 9.2 lb/gal to 7000 ft")
	f.Add("empty to 1 m,, to , to 5 ft")
	f.Fuzz(func(t *testing.T, text string) {
		var s, back stack.Stack
		if s.UnmarshalText([]byte(text)) != nil {
			return
		}
		out, err := s.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if err := back.UnmarshalText(out); err != nil || len(back) != len(s) || back.Bottom() != s.Bottom() {
			t.Fatalf("%q was written %q and read as %v, %v", text, out, back, err)
		}
	})
}
