package confined

import (
	"fmt"
	"math"
	"slices"
	"time"

	"gonum.org/v1/gonum/interp"
	"gonum.org/v1/gonum/stat"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/clock"
	"completion.example/internal/fault"
)

// PressureTest is a recorded test with what it is to be judged by.
type PressureTest struct {
	Record    Record        `json:"record"`
	Criterion Criterion     `json:"criterion"`
	Start     time.Duration `json:"start"`  // of the hold, on the record's clock
	Target    unit.Pressure `json:"target"` // the least pressure at the start of the hold; zero asks for none
	// Resolution is the smallest change that the gauge shows. Falls up to it
	// are none.
	Resolution unit.Pressure `json:"resolution"`
	// PerDegree is the rise of the closed system's pressure per degree of
	// warming, in Pa/K (PressurePerDegree, or Trapped.Solve). It turns the
	// recorded temperature into pressure; zero leaves temperature out.
	PerDegree float64 `json:"per_degree"`
}

// TestVerdict is what comes of a test. The zero value is undecided.
type TestVerdict int

// The verdicts.
const (
	Undecided TestVerdict = iota // the record doesn't cover the hold
	Passed
	Failed
)

var verdictNames = [...]string{"undecided", "passed", "failed"}

func (v TestVerdict) String() string {
	if v < 0 || int(v) >= len(verdictNames) {
		return fmt.Sprintf("Verdict(%d)", int(v))
	}
	return verdictNames[v]
}

// MarshalText writes the verdict's name.
func (v TestVerdict) MarshalText() ([]byte, error) { return []byte(v.String()), nil }

// UnmarshalText reads a verdict's name.
func (v *TestVerdict) UnmarshalText(text []byte) error {
	i := slices.Index(verdictNames[:], string(text))
	if i < 0 {
		return fault.NewIn("confined", "", "verdict is %q; must be one of %q", text, verdictNames)
	}
	*v = TestVerdict(i)
	return nil
}

// Trend is how the pressure's fall develops from the first half of the hold to
// the second. The zero value is unknown.
type Trend int

// The trends.
const (
	TrendUnknown   Trend = iota // too few samples in one of the halves
	TrendSteady                 // no fall, or one whose change is within its uncertainty
	TrendSlowing                // falls less in the second half
	TrendHastening              // falls more in the second half
	TrendRising                 // pressure rises: warming, or inflow
)

var trendNames = [...]string{"unknown", "steady", "slowing", "hastening", "rising"}

func (t Trend) String() string {
	if t < 0 || int(t) >= len(trendNames) {
		return fmt.Sprintf("Trend(%d)", int(t))
	}
	return trendNames[t]
}

// MarshalText writes the trend's name.
func (t Trend) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// UnmarshalText reads a trend's name.
func (t *Trend) UnmarshalText(text []byte) error {
	i := slices.Index(trendNames[:], string(text))
	if i < 0 {
		return fault.NewIn("confined", "", "trend is %q; must be one of %q", text, trendNames)
	}
	*t = Trend(i)
	return nil
}

// Judgement is a test judged.
type Judgement struct {
	Verdict TestVerdict `json:"verdict"`
	Reasons []string    `json:"reasons"` // what decided it

	Start   unit.Pressure `json:"start"`   // at the start of the hold
	End     unit.Pressure `json:"end"`     // at its end, or at the end of the record
	Fall    unit.Pressure `json:"fall"`    // Start - End
	Decline float64       `json:"decline"` // Fall/Start
	Allowed unit.Pressure `json:"allowed"`
	// MostDecline and Source are the criterion's, for Steps.
	MostDecline float64 `json:"most_decline"`
	Source      string  `json:"source"`

	Held      time.Duration `json:"held"`      // as far as the record goes
	Cooling   unit.Pressure `json:"cooling"`   // the part of Fall that the change of temperature explains; negative where warming hides a fall
	Corrected unit.Pressure `json:"corrected"` // Fall - Cooling

	PerHour      unit.Pressure `json:"per_hour"`       // rate of fall over the hold, by regression; positive while falling
	PerHourError unit.Pressure `json:"per_hour_error"` // its standard error
	Early        unit.Pressure `json:"early"`          // the same in each half of the hold
	Late         unit.Pressure `json:"late"`
	Trend        Trend         `json:"trend"`
}

// Judge reads the record over the hold: pressures at its ends by straight
// lines between samples, the fall against what the criterion allows, rates of
// fall by linear regression, and the trend by comparing the halves at two
// standard errors. A record that ends before the hold does is failed where the
// fall is already too much, and otherwise undecided.
//
//	fall = p(start) − p(end) ≤ d·p(start)
//
// Source: the criterion; ordinary least squares for the rates.
func (t PressureTest) Judge() (Judgement, error) {
	if err := t.Validate(); err != nil {
		return Judgement{}, err
	}
	pressure, temperature, err := t.curves()
	if err != nil {
		return Judgement{}, fault.Join("confined", fault.At("Record", err))
	}
	last := t.Record[len(t.Record)-1].At
	end := min(t.Start+t.Criterion.Hold, last)
	a, b := t.Start.Seconds(), end.Seconds()
	j := Judgement{Start: unit.Pressure(pressure.Predict(a)), End: unit.Pressure(pressure.Predict(b)), Held: end - t.Start,
		MostDecline: t.Criterion.MostDecline, Source: t.Criterion.Source}
	if j.Source == "" {
		j.Source = "the criterion given"
	}
	j.Fall = j.Start - j.End
	if j.Start >= 1*unit.Pascal { // below, the share of nothing
		j.Decline = float64(j.Fall / j.Start)
	}
	j.Allowed = t.Criterion.Allowed(j.Start)
	if temperature != nil {
		j.Cooling = unit.Pressure(t.PerDegree * (temperature.Predict(a) - temperature.Predict(b)))
	}
	j.Corrected = j.Fall - j.Cooling
	t.Resolution = max(t.Resolution, 1e-9*j.Start) // arithmetic has noise too
	t.rates(&j, a, b)
	t.decide(&j)
	return j, nil
}

// Validate reports everything that is wrong with t.
func (t PressureTest) Validate() error {
	f := fault.In("confined")
	f.At("Criterion", t.Criterion.Validate())
	f.Add(fault.Between("Target", t.Target, 0, mostTrapped))
	f.Add(fault.Between("Resolution", t.Resolution, 0, mostTrapped))
	f.Add(fault.Plain("PerDegree", t.PerDegree, -1e9, 1e9, "Pa/K"))
	err := t.Record.Validate()
	f.At("Record", err)
	if err != nil {
		return f.Err()
	}
	if first, last := t.Record[0].At, t.Record[len(t.Record)-1].At; t.Start < first || t.Start >= last {
		f.New("Start", "is %v; must be from %v to before %v, where the record ends", t.Start, first, last)
	}
	if t.Criterion.AfterTemperature && (t.PerDegree == 0 || t.Record[0].Temperature == unit.Temperature{}) {
		f.New("Criterion", "is %q, which judges after temperature; must have recorded temperatures and PerDegree", t.Criterion.Name)
	}
	return f.Err()
}

func (t PressureTest) curves() (pressure, temperature *interp.PiecewiseLinear, err error) {
	n := len(t.Record)
	at, p, k := make([]float64, n), make([]float64, n), make([]float64, n)
	for i, s := range t.Record {
		at[i], p[i], k[i] = s.At.Seconds(), float64(s.Pressure), s.Temperature.Kelvin()
	}
	pressure = new(interp.PiecewiseLinear)
	if err := pressure.Fit(at, p); err != nil {
		return nil, nil, err
	}
	if t.PerDegree == 0 || t.Record[0].Temperature == (unit.Temperature{}) {
		return pressure, nil, nil
	}
	temperature = new(interp.PiecewiseLinear)
	return pressure, temperature, temperature.Fit(at, k)
}

// rates fits straight lines to the whole hold and to its halves.
func (t PressureTest) rates(j *Judgement, a, b float64) {
	var all, early, late line
	middle := (a + b) / 2
	for _, s := range t.Record {
		x, p := s.At.Seconds()-a, float64(s.Pressure)
		if x < 0 || x > b-a {
			continue
		}
		all.add(x, p)
		if x <= middle-a {
			early.add(x, p)
		}
		if x >= middle-a {
			late.add(x, p)
		}
	}
	whole, deviation := all.fall()
	j.PerHour, j.PerHourError = unit.Pressure(whole*3600), unit.Pressure(deviation*3600)
	first, e1 := early.fall()
	second, e2 := late.fall()
	j.Early, j.Late = unit.Pressure(first*3600), unit.Pressure(second*3600)
	half := (b - a) / 2
	// What a gauge can't resolve is no trend, and neither is noise.
	doubt := math.Max(2*math.Hypot(e1, e2), 2*float64(t.Resolution)/half)
	switch change := second - first; {
	case len(early.x) < 2 || len(late.x) < 2:
		j.Trend = TrendUnknown
	case second < -math.Max(2*e2, float64(t.Resolution)/half):
		j.Trend = TrendRising
	case change > doubt:
		j.Trend = TrendHastening
	case change < -doubt:
		j.Trend = TrendSlowing
	default:
		j.Trend = TrendSteady
	}
}

type line struct{ x, p []float64 }

func (l *line) add(x, p float64) { l.x, l.p = append(l.x, x), append(l.p, p) }

// fall returns the rate of fall in Pa/s with its standard error, zero where two
// points leave none.
func (l line) fall() (rate, deviation float64) {
	n := len(l.x)
	if n < 2 {
		return 0, 0
	}
	c, m := stat.LinearRegression(l.x, l.p, nil, false)
	var left, spread float64
	mean := stat.Mean(l.x, nil)
	for i, x := range l.x {
		d := l.p[i] - c - m*x
		left += d * d
		spread += (x - mean) * (x - mean)
	}
	if n > 2 {
		deviation = math.Sqrt(left / float64(n-2) / spread)
	}
	return -m, deviation
}

func (t PressureTest) decide(j *Judgement) {
	why := func(format string, args ...any) { j.Reasons = append(j.Reasons, fmt.Sprintf(format, args...)) }
	judged, name := j.Fall, "fall"
	if t.Criterion.AfterTemperature {
		judged, name = j.Corrected, "fall less cooling"
	}
	allowed := max(j.Allowed, t.Resolution)
	failed := false
	if j.Start < t.Target {
		failed = true
		why("%v at the start of the hold is below the target of %v", j.Start.Rounded(4), t.Target.Rounded(4))
	}
	if judged > allowed {
		failed = true
		why("%s of %v is more than the %v allowed", name, judged.Rounded(3), allowed.Rounded(3))
	}
	whole := j.Held >= t.Criterion.Hold
	if t.Criterion.Stabilizing && whole {
		switch {
		case j.Trend == TrendHastening:
			failed = true
			why("the pressure doesn't stabilize: it falls by %v an hour in the second half, %v in the first", j.Late.Rounded(3), j.Early.Rounded(3))
		case j.Trend == TrendSteady && j.Late > 0 && unit.Pressure(j.Held.Hours())*j.Late > t.Resolution && t.significant(*j):
			failed = true
			why("the pressure doesn't stabilize: it falls by %v an hour and doesn't slow down", j.Late.Rounded(3))
		case j.Trend == TrendUnknown:
			whole = false
			why("too few samples to see whether the pressure stabilizes")
		}
	}
	switch {
	case failed:
		j.Verdict = Failed
	case !whole:
		if j.Held < t.Criterion.Hold {
			why("the record covers %v of the hold of %v", clock.Words(j.Held), clock.Words(t.Criterion.Hold))
		}
		j.Verdict = Undecided
	default:
		j.Verdict = Passed
		why("%s of %v over %v is within the %v allowed", name, judged.Rounded(3), clock.Words(t.Criterion.Hold), allowed.Rounded(3))
	}
	if j.Trend == TrendRising {
		why("the pressure rises: warming or inflow can hide a leak")
	}
	if j.Cooling < 0 && !t.Criterion.AfterTemperature {
		why("warming hides %v of fall", (-j.Cooling).Rounded(3))
	}
}

// significant tells whether the fall stands out of its noise.
func (t PressureTest) significant(j Judgement) bool { return j.PerHour > 2*j.PerHourError }
