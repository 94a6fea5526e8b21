package controlline

import (
	"fmt"
	"math"
	"testing"
	"time"

	"completion.example/fluid/confined"
	"completion.example/hydrostatics/unit"

	"github.com/stretchr/testify/require"
)

var shift = Shift{
	Feed: steel(quarter), Vent: steel(quarter), Liquid: oil,
	Pump: 3000 * unit.PSI, Move: 500 * unit.PSI,
	Swept: 0.5 * unit.Litre, Displaced: 0.45 * unit.Litre,
}

func ExampleShift_Plan() {
	p, err := shift.Plan()
	if err != nil {
		panic(err)
	}
	fmt.Println("moving after", p.Delay.Round(time.Second), "for", p.Travel.Round(time.Second))
	fmt.Printf("pump %.2f L, of which the line takes %.2f L; %.2f L come back\n",
		p.Pumped.In(unit.Litre), p.Held.In(unit.Litre), p.Returned.In(unit.Litre))
	low := shift
	low.Pump = 400 * unit.PSI
	_, err = low.Plan()
	fmt.Println(err)
	// Output:
	// moving after 19s for 5m3s
	// pump 0.92 L, of which the line takes 0.42 L; 0.45 L come back
	// controlline: the pressure doesn't move it: 400 psi at the device of 500 psi needed; the panel must hold more than 500 psi
}

func ExampleShift_Diagnose() {
	p, err := shift.Plan()
	if err != nil {
		panic(err)
	}
	for _, r := range []Reading{
		{Pumped: 0.93 * unit.Litre, Returned: 0.44 * unit.Litre},
		{Pumped: 0.43 * unit.Litre},
		{Pumped: 1.60 * unit.Litre, Returned: 0.45 * unit.Litre},
	} {
		r.Uncertainty = 0.03 * unit.Litre
		d, err := shift.Diagnose(p, r)
		fmt.Println(d.Finding, err)
	}
	// Output:
	// shifted <nil>
	// not moved <nil>
	// losing <nil>
}

// Time to push 0.5 L through 3,000 m of 1/4 × 0.049 in line with 3,000 psi, by
// hand with Hagen and Poiseuille: 133 s at 10 cP.
func TestRateAtLaminar(t *testing.T) {
	q, err := quarter.RateAt(oil, 3000*unit.PSI)
	require.NoError(t, err)
	d := 0.152 * 0.0254
	hand := math.Pi * math.Pow(d, 4) * 3000 * 6894.757293 / (128 * 0.010 * 3000)
	require.InEpsilon(t, hand, float64(q), 1e-9)
	require.InDelta(t, 133, 0.5e-3/float64(q), 0.5)
	f, err := quarter.Friction(oil, q)
	require.NoError(t, err)
	require.InEpsilon(t, float64(3000*unit.PSI), float64(f.Loss(quarter.Length)), 1e-9)
}

// Forward and inverse in every regime.
func TestRateAtInvertsFriction(t *testing.T) {
	for _, mu := range []float64{0.5, 2, 10, 100} {
		for _, bore := range []float64{0.152, 0.402} {
			for rate := 0.01; rate < 60; rate *= 1.7 {
				l, q := quarter, oil
				l.OD = unit.Length(bore)*unit.Inch + 2*l.Wall
				q.Viscosity = unit.Viscosity(mu) * unit.Centipoise
				want := unit.FlowRate(rate) * unit.LitrePerMinute
				f, err := l.Friction(q, want)
				require.NoError(t, err)
				if f.Loss(l.Length) > 1000*unit.Megapascal {
					continue
				}
				got, err := l.RateAt(q, f.Loss(l.Length))
				require.NoError(t, err, "mu %v bore %v rate %v", mu, bore, rate)
				require.InEpsilon(t, float64(want), float64(got), 1e-6, "mu %v bore %v rate %v regime %v", mu, bore, rate, f.Regime)
			}
		}
	}
}

func TestRateAtTooFast(t *testing.T) {
	l := Line{OD: 100 * unit.Millimetre, Wall: 1 * unit.Millimetre, Length: 1}
	_, err := l.RateAt(LineFluid{Density: 1000, Viscosity: 1e-3}, 1e11)
	require.ErrorContains(t, err, "faster")
}

// Fourier series and error functions are two ways to the same response.
func TestArrivedTwoWays(t *testing.T) {
	for tau := 0.02; tau < 1; tau *= 1.1 {
		early, late, sign := 0.0, 0.0, 1.0
		for n := 0; n < 60; n++ {
			k := float64(2*n + 1)
			early += 2 * sign * math.Erfc(k/(2*math.Sqrt(tau)))
			late += 4 / math.Pi * sign / k * math.Exp(-k*k*math.Pi*math.Pi/4*tau)
			sign = -sign
		}
		require.InDelta(t, early, 1-late, 1e-14, "tau %v", tau)
		require.InDelta(t, early, arrived(tau), 1e-14, "tau %v", tau)
	}
	require.Zero(t, arrived(0))
	require.True(t, math.IsNaN(arrived(math.NaN())))
	// Crank, The Mathematics of Diffusion (1975), Fig. 4.1, the sheet's middle:
	// half has arrived at τ = 0.379 (value from the series by hand).
	require.InDelta(t, 0.5, arrived(0.379), 1e-3)
}

func TestUntilInvertsArrived(t *testing.T) {
	r, err := steel(quarter).Response(oil)
	require.NoError(t, err)
	for _, s := range []float64{1e-6, 0.01, 0.3, 0.5, 0.9, 0.999999} {
		after, err := r.Until(s)
		require.NoError(t, err)
		require.InDelta(t, s, r.Arrived(after), 1e-6)
	}
	for _, s := range []float64{0, 1, -1, 2, math.NaN()} {
		_, err := r.Until(s)
		require.Error(t, err)
	}
	stiff := oil
	stiff.Compressibility = 0
	_, err = quarter.Response(stiff)
	require.Error(t, err, "nothing gives")
}

// simulate moves the piston with both lines in short cells, implicit in nothing:
// continuity and Hagen-Poiseuille in small steps.
func simulate(s Shift) (moving, done float64) {
	const n = 30
	type tube struct {
		p                []float64
		storage, conduct float64
	}
	make1 := func(l Line) tube {
		d, L := float64(l.ID()), float64(l.Length)
		soft := float64(s.Liquid.Compressibility + l.WallCompliance(confined.EndsFixed))
		return tube{make([]float64, n), float64(l.Volume()) / n * soft,
			math.Pi * d * d * d * d * n / (128 * float64(s.Liquid.Viscosity) * L)}
	}
	feed, vent := make1(s.Feed), make1(s.Vent)
	ratio := float64(s.Displaced / s.Swept)
	dt := 0.2 * feed.storage / feed.conduct
	for i := range vent.p {
		vent.p[i] = float64(s.Back)
	}
	swept, t := 0.0, 0.0
	moving = math.Inf(1)
	step := func(c tube, in, out float64) {
		q := in
		for i := range c.p {
			next := out
			if i < n-1 {
				next = c.conduct * (c.p[i] - c.p[i+1])
			}
			// Gauss-Seidel would bias the flux; the old pressures are kept by
			// computing the outflow before the cell changes.
			dp := (q - next) / c.storage * dt
			q = next
			c.p[i] += dp
		}
	}
	for swept < float64(s.Swept) && t < 1e5 {
		// The piston takes what brings the last feed cell and the first vent
		// cell to a difference of Move.
		excess := feed.p[n-1] - vent.p[0] - float64(s.Move)
		q := max(0, excess/(dt/feed.storage+ratio*dt/vent.storage))
		if q > 0 && math.IsInf(moving, 1) {
			moving = t
		}
		swept += q * dt
		step(feed, 2*feed.conduct*(float64(s.Pump)-feed.p[0]), q)
		step(vent, q*ratio, 2*vent.conduct*(vent.p[n-1]-float64(s.Back)))
		t += dt
	}
	return moving, t
}

// The sum of delay and travel against the whole line solved in time.
func TestPlanAgreesWithSimulation(t *testing.T) {
	for i, move := range []float64{100, 500, 1500, 2400} {
		for _, swept := range []float64{0.2, 0.5, 2} {
			s := shift
			s.Move = unit.Pressure(move) * unit.PSI
			s.Swept = unit.Volume(swept) * unit.Litre
			s.Displaced = 0.9 * s.Swept
			s.Back = unit.Pressure(150*i) * unit.PSI
			p, err := s.Plan()
			require.NoError(t, err)
			require.Equal(t, "laminar", p.Regime)
			moving, done := simulate(s)
			require.InEpsilon(t, moving, p.Delay.Seconds(), 0.01, "delay, move %v", move)
			within := map[float64]float64{0.2: 0.08, 0.5: 0.03, 2: 0.01}[swept]
			require.InEpsilon(t, done, p.Total.Seconds(), within, "total, move %v swept %v", move, swept)
		}
	}
}

func TestPlanBalances(t *testing.T) {
	p, err := shift.Plan()
	require.NoError(t, err)
	require.InEpsilon(t, float64(p.Drive), float64(p.FeedLoss+p.VentLoss), 1e-9)
	require.InEpsilon(t, float64(shift.Swept), float64(p.Rate)*p.Travel.Seconds(), 1e-6)
	require.InDelta(t, 2500, p.Drive.In(unit.PSI), 1e-6, "heads of equal lines cancel")

	noReturn := shift
	noReturn.Displaced = 0
	q, err := noReturn.Plan()
	require.NoError(t, err)
	require.Zero(t, q.VentLoss)
	require.Greater(t, q.Rate, p.Rate)

	back := shift
	back.Back = 2600 * unit.PSI
	_, err = back.Plan()
	var none *NoShiftError
	require.ErrorAs(t, err, &none)
	require.ErrorIs(t, err, ErrNoShift)
	require.InDelta(t, 3100, none.Needed.In(unit.PSI), 1e-6)
	back.Pump = none.Needed * (1 + 1e-4)
	_, err = back.Plan()
	require.NoError(t, err, "a hair above what the error asks for")
}

func TestShiftRefuses(t *testing.T) {
	for name, change := range map[string]func(*Shift){
		"no pump":   func(s *Shift) { s.Pump = 0 },
		"NaN move":  func(s *Shift) { s.Move = unit.Pressure(math.NaN()) },
		"back":      func(s *Shift) { s.Back = -1 },
		"no volume": func(s *Shift) { s.Swept = 0 },
		"displaced": func(s *Shift) { s.Displaced = -1 },
		"feed":      func(s *Shift) { s.Feed = Line{} },
		"vent":      func(s *Shift) { s.Vent = Line{} },
		"liquid":    func(s *Shift) { s.Liquid = LineFluid{} },
	} {
		s := shift
		change(&s)
		_, err := s.Plan()
		require.Error(t, err, name)
		require.NotErrorIs(t, err, ErrNoShift, name)
	}
}

func FuzzShiftPlan(f *testing.F) {
	f.Add(0.25, 0.049, 3000.0, 10.0, 5e-10, 2e7, 3e6, 5e-4)
	f.Fuzz(func(t *testing.T, od, wall, length, mu, c, pump, move, swept float64) {
		l := Line{OD: unit.Length(od) * unit.Inch, Wall: unit.Length(wall) * unit.Inch, Length: unit.Length(length), TVD: unit.Length(length)}
		s := Shift{Feed: l, Vent: l, Liquid: LineFluid{Density: 870, Viscosity: unit.Viscosity(mu) * unit.Centipoise, Compressibility: unit.Compressibility(c)},
			Pump: unit.Pressure(pump), Move: unit.Pressure(move), Swept: unit.Volume(swept), Displaced: unit.Volume(swept)}
		p, err := s.Plan()
		if err != nil {
			return
		}
		for _, x := range []float64{float64(p.Rate), float64(p.Pumped), float64(p.Returned), float64(p.FeedLoss), float64(p.Total)} {
			if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
				t.Fatalf("%+v gives %+v", s, p)
			}
		}
	})
}

func BenchmarkPlan(b *testing.B) {
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		if _, err := shift.Plan(); err != nil {
			b.Fatal(err)
		}
	}
}
