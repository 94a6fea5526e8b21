package api

import (
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"completion.example/fluid"
	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/tubular/catalogue"
	"completion.example/tubular/drag"
	"completion.example/valve"
	"completion.example/valve/production"
	"completion.example/valve/production/choke"
	"completion.example/valve/production/inflow"
)

func TestEveryPackageSaysWhetherItIsSafeForConcurrentUse(t *testing.T) {
	packages, err := public(root)
	require.NoError(t, err)
	for _, p := range packages {
		if strings.HasSuffix(p.name(), "test") || p.Path == "valve/sequence" || strings.HasPrefix(p.Path, "valve/sequence/") {
			continue // the engine's own tests and doc speak of its workers
		}
		said := false
		for _, f := range p.Code {
			said = said || f.Doc != nil && strings.Contains(strings.Join(strings.Fields(f.Doc.Text()), " "), "concurrent use")
		}
		if !said {
			t.Errorf("%s: its package doc doesn't say whether it is safe for concurrent use", p.Path)
		}
	}
}

// Every value that is prepared once, used by eight at once: the same answers as
// alone, and with -race nothing that one writes while another reads.
func TestPreparedValuesAreSafeForConcurrentUse(t *testing.T) {
	depth := 9000 * unit.Foot
	pipe := unit.Must(catalogue.Pipe("3-1/2 in 9.3 lb/ft L80"))
	path := unit.Must(hydrostatics.NewPath([]hydrostatics.Station{{MD: 2000 * unit.Foot}, {MD: 4000 * unit.Foot, Inclination: 60 * unit.Degree}, {MD: depth, Inclination: 60 * unit.Degree}}))
	warm := unit.Must(hydrostatics.Geothermal{Ground: unit.Fahrenheit(70), Gradient: 1.4 * unit.FahrenheitPer100Feet}.Profile(depth))
	column := unit.Must(hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: unit.Must(fluid.ParseBrine("CaCl2 11.3 lb/gal")), BottomTVD: depth}}, warm, hydrostatics.Reference{}))
	body := unit.Must(pipe.Prepare())
	hung := unit.Must(drag.String{
		Sections: []drag.PipeSection{{Pipe: pipe, Length: depth}}, BottomMD: depth, Path: path,
		HoleSections: []drag.HoleSection{{BottomMD: depth, Friction: 0.2, Hole: 6.184 * unit.Inch}},
	}.Prepare())
	curve := unit.Must(choke.Table{{Name: "shut"}, {Name: "half", Travel: 0.5, Coefficient: 5 * unit.Cv}, {Name: "open", Travel: 1, Coefficient: 10 * unit.Cv}}.Curve())
	well := unit.Must(production.Well{
		Outflow: production.FixedPressure{Pressure: 1500 * unit.PSI},
		Zones:   []production.Zone{{Name: "only", TVD: depth, Inflow: inflow.LiquidDeliverability{Reservoir: 3000 * unit.PSI, Index: 2 * unit.BarrelPerDayPSI}}},
	}.Prepare())
	row := valve.Row{{Threshold: unit.Within(3000*unit.PSI, 0.05)}}
	grade := unit.Must(catalogue.FindGrade("L80"))
	standard := unit.Must(catalogue.Standard())

	answers := map[string]func() (float64, error){
		"path":        func() (float64, error) { v, err := path.TVD(8000 * unit.Foot); return float64(v), err },
		"temperature": func() (float64, error) { return warm.At(5000 * unit.Foot).Kelvin(), nil },
		"column":      func() (float64, error) { v, err := column.At(7000 * unit.Foot); return float64(v), err },
		"body": func() (float64, error) {
			return float64(body.VonMises(tubular.Load{Axial: 100 * unit.Kilopound, Inside: 5000 * unit.PSI})), nil
		},
		"drag":     func() (float64, error) { return float64(hung.HookLoad(drag.Pulled, 0)), nil },
		"set down": func() (float64, error) { return float64(hung.SetDown(5 * unit.Kilopound).Slacked), nil },
		"curve":    func() (float64, error) { v, err := curve.At(0.7); return float64(v), err },
		"well": func() (float64, error) {
			var f production.Flow
			err := well.Solve([]int{0}, &f)
			return float64(f.Rate), err
		},
		"row": func() (float64, error) { return float64(row.Ramp(valve.TriggerState{}, 0, 3300*unit.PSI).Verdict), nil },
		"catalogue": func() (float64, error) {
			e, err := standard.Find(pipe.OD, pipe.Weight)
			return float64(e.Pipe(grade).ID), err
		},
		"by text": func() (float64, error) { p, err := catalogue.Pipe("2-7/8 in 6.5 lb/ft L80"); return float64(p.ID), err },
	}
	for name, answer := range answers {
		alone, err := answer()
		require.NoError(t, err, name)
		var all sync.WaitGroup
		for range 8 {
			all.Go(func() {
				for range 20 {
					if got, err := answer(); err != nil || got != alone {
						t.Errorf("%s: got %v (%v) beside others, %v alone", name, got, err, alone)
						return
					}
				}
			})
		}
		all.Wait()
	}
}
