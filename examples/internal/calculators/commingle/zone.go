package commingle

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/production"
	"completion.example/valve/production/inflow"
)

// zone is a zone with the position its choke is in.
type zone struct {
	production.Zone
	choke   string
	gravity float64 // of gas
}

// zones are a flag that may be given many times; the first replaces the demo's.
type zones struct {
	list  []zone
	given bool
}

// demo is an invented well: a wet zone below a dry one.
func demo() zones {
	var z zones
	for _, text := range []string{
		"name=lower; depth=9400 ft; pr=4000 psi; J=5 bbl/d/psi; cut=0.55; density=7.8 lb/gal; B=1.1; choke=2",
		"name=upper; depth=9000 ft; pr=3700 psi; J=4 bbl/d/psi; pb=2200 psi; cut=0.05; density=6.9 lb/gal; B=1.25; choke=open",
	} {
		if err := z.Set(text); err != nil {
			z.list = nil
		}
	}
	z.given = false
	return z
}

// String lists the zones as they are given.
func (z *zones) String() string {
	var s []string
	for _, one := range z.list {
		if g, ok := one.Inflow.(inflow.GasDeliverability); ok {
			s = append(s, fmt.Sprintf("name=%s; depth=%v; pr=%v; AOF=%g Mcf/d; n=%v; gravity=%v; T=%v; Z=%v; k=%v; xT=%v; choke=%s", one.Name, one.TVD, g.Reservoir,
				g.OpenFlow.In(unit.ThousandCubicFeetPerDay), g.Exponent, one.gravity, one.Gas.Temperature, one.Gas.Z, one.Gas.HeatRatio, one.Gas.Ratio, one.choke))
			continue
		}
		l, _ := one.Inflow.(inflow.LiquidDeliverability)
		s = append(s, fmt.Sprintf("name=%s; depth=%v; pr=%v; J=%v; pb=%v; cut=%v; density=%v; B=%v; choke=%s",
			one.Name, one.TVD, l.Reservoir, l.Index, l.Bubble, one.WaterCut, one.Density, one.VolumeFactor, one.choke))
	}
	return strings.Join(s, " | ")
}

// Set reads one zone.
func (z *zones) Set(text string) error {
	one, gas := zone{choke: "open"}, usual()
	var l inflow.LiquidDeliverability
	number := func(x *float64) func(string) error {
		return func(s string) (err error) { *x, err = strconv.ParseFloat(s, 64); return err }
	}
	word := func(w *string) func(string) error { return func(s string) error { *w = s; return nil } }
	quantity := func(q interface{ UnmarshalText([]byte) error }) func(string) error {
		return func(s string) error { return q.UnmarshalText([]byte(s)) }
	}
	keys := map[string]func(string) error{
		"name": word(&one.Name), "choke": word(&one.choke), "cut": number(&one.WaterCut), "B": number(&one.VolumeFactor),
		"depth": quantity(&one.TVD), "density": quantity(&one.Density), "pr": quantity(&l.Reservoir), "J": quantity(&l.Index), "pb": quantity(&l.Bubble),
		"AOF": quantity(&gas.inflow.OpenFlow), "n": number(&gas.inflow.Exponent), "gravity": number(&gas.gravity), "T": quantity(&gas.choke.Temperature),
		"Z": number(&gas.choke.Z), "k": number(&gas.choke.HeatRatio), "xT": number(&gas.choke.Ratio),
	}
	var faults []error
	for part := range strings.SplitSeq(text, ";") {
		name, value, _ := strings.Cut(part, "=")
		set, ok := keys[strings.TrimSpace(name)]
		if !ok {
			faults = append(faults, fmt.Errorf("%q is none of name, depth, pr, J, pb, cut, density, B, AOF, n, gravity, T, Z, k, xT, choke", strings.TrimSpace(name)))
			continue
		}
		if err := set(strings.TrimSpace(value)); err != nil {
			faults = append(faults, err)
		}
	}
	if err := errors.Join(faults...); err != nil {
		return err
	}
	if one.Density == 0 {
		one.Density = 7 * unit.PoundPerGallon
	}
	one.Inflow = l
	if gas.inflow.OpenFlow != 0 {
		gas.into(&one, l.Reservoir)
	}
	if !z.given {
		z.list, z.given = z.list[:0:0], true
	}
	z.list = append(z.list, one)
	return nil
}

// read reads a table from a file, or from text where there is none.
func read[T any](file, text string, parse func(io.Reader) (T, error)) (t T, err error) {
	if file == "" {
		return parse(strings.NewReader(text))
	}
	f, err := os.Open(file)
	if err != nil {
		return t, err
	}
	defer f.Close()
	return parse(f)
}
