package tubular_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
)

var (
	sinkPressure unit.Pressure
	sinkUsage    tubular.Usage
	sinkCurve    tubular.CollapseCurve
)

// loads are many loads, so that no branch is learned by heart.
func loads() []tubular.Load {
	l := make([]tubular.Load, 1024)
	for i := range l {
		x := float64(i)
		l[i] = tubular.Load{
			Axial:     unit.Force(x-300) * 200 * unit.PoundForce,
			Inside:    unit.Pressure(x) * 5 * unit.PSI,
			Outside:   unit.Pressure(900-x) * 6 * unit.PSI,
			Curvature: unit.Curvature(i%7) * unit.DegreePer100Feet,
		}
	}
	return l
}

func prepared(b *testing.B) tubular.Body {
	body, err := graded(wall(3.5, 0.254), 80*unit.KSI, 95*unit.KSI).Prepare()
	if err != nil {
		b.Fatal(err)
	}
	return body
}

func BenchmarkBodyVonMises(b *testing.B) {
	body, l := prepared(b), loads()
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		sinkPressure = body.VonMises(l[i&1023])
		i++
	}
}

func BenchmarkBodyStraightVonMises(b *testing.B) {
	body, l := prepared(b), loads()
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		x := &l[i&1023]
		sinkPressure = body.StraightVonMises(x.Axial, x.Inside, x.Outside)
		i++
	}
}

func BenchmarkStressesVonMises(b *testing.B) {
	p, l := graded(wall(3.5, 0.254), 80*unit.KSI, 95*unit.KSI), loads()
	i := 0
	for b.Loop() {
		sinkPressure = p.Stresses(l[i&1023]).VonMises()
		i++
	}
}

func BenchmarkCollapseCurvePressure(b *testing.B) {
	c, err := tubular.PrepareCollapse(80 * unit.KSI)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		sinkPressure = c.Pressure(10 + float64(i&31))
		i++
	}
}

func BenchmarkPrepareCollapse(b *testing.B) {
	for b.Loop() {
		sinkCurve, _ = tubular.PrepareCollapse(80 * unit.KSI)
	}
}

func BenchmarkBodyCollapseUnderTension(b *testing.B) {
	body := prepared(b)
	i := 0
	for b.Loop() {
		sinkPressure = body.Collapse(unit.Pressure(1+i&31)*unit.KSI, unit.KSI)
		i++
	}
}

func BenchmarkBodyUsage(b *testing.B) {
	body, l, f := prepared(b), loads(), tubular.NorwegianShelf()
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		sinkUsage = body.Usage(l[i&1023], f)
		i++
	}
}
