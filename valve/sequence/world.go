package sequence

import (
	"errors"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/spelling"
)

// Quantities are the plan's values that have a tolerance, each at its nominal
// value: what a choice is made of.
func (p *Plan) Quantities() []Choice {
	if p == nil {
		return nil
	}
	p, err := p.Derive()
	if err != nil {
		return nil
	}
	var all []Choice
	for _, u := range uncertainties(p.modelled()) {
		if u.least != u.greatest {
			all = append(all, Choice{Path: u.path, Name: u.name, Value: u.text(u.nominal), Exact: u.exact(u.nominal), si: u.nominal})
		}
	}
	return all
}

// Choose reads a choice as findings write it: "sleeve A: closes = 1290 psi,
// drag = 6000 lbf". Each quantity is named by its name or by its path; every other
// one that has a tolerance is nominal. The threshold of pins on a piston is a
// pressure or a force. What flow between two references makes is named by its path
// alone, such as "share.annulus|tubing = 20 %".
func (p *Plan) Choose(text string) ([]Choice, error) {
	if p == nil {
		return nil, errNoPlan
	}
	q, err := p.Derive()
	if err != nil {
		return nil, err
	}
	q = q.modelled()
	known := uncertainties(q)
	pairs, err := split(text, known)
	if err != nil {
		return nil, err
	}
	chosen := map[string]bool{}
	var all []Choice
	var faults []error
	for _, x := range pairs {
		c, err := q.choose(x, known)
		switch {
		case err != nil:
			faults = append(faults, err)
		case chosen[c.Path]:
			faults = append(faults, fmt.Errorf("sequence: %s is chosen twice", c.Name))
		default:
			chosen[c.Path] = true
			all = append(all, c)
		}
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	for _, c := range p.Quantities() {
		if !chosen[c.Path] {
			all = append(all, c)
		}
	}
	_, err = p.At(all)
	return all, err
}

// pair is a quantity and the value that is chosen for it.
type pair struct{ name, value string }

// split takes a choice apart. Names may have commas in them, so that what stands
// before an equals sign is the longest name known that ends there.
func split(text string, known []uncertain) ([]pair, error) {
	parts := strings.Split(text, "=")
	if len(parts) < 2 {
		return nil, fmt.Errorf("sequence: %q is no choice; write it as name = value, name = value", text)
	}
	name := strings.TrimSpace(parts[0])
	var all []pair
	for i, middle := range parts[1:] {
		middle = strings.TrimSpace(middle)
		if i == len(parts)-2 {
			all = append(all, pair{name, middle})
			break
		}
		value, next := "", ""
		for _, u := range known {
			for _, n := range []string{u.name, u.path} {
				if before, ok := strings.CutSuffix(middle, n); ok && len(n) > len(next) && strings.HasSuffix(strings.TrimSpace(before), ",") {
					value, next = strings.TrimSuffix(strings.TrimSpace(before), ","), n
				}
			}
		}
		if next == "" {
			i := strings.LastIndex(middle, ",")
			if i < 0 {
				return nil, fmt.Errorf("sequence: %q: a comma must stand between a value and the next name", middle)
			}
			value, next = middle[:i], strings.TrimSpace(middle[i+1:])
		}
		all = append(all, pair{name, strings.TrimSpace(value)})
		name = next
	}
	return all, nil
}

func (p *Plan) choose(x pair, known []uncertain) (Choice, error) {
	if isShare(x.name) {
		number, ok := strings.CutSuffix(x.value, "%")
		share, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
		if !ok || err != nil || !(share >= 0 && share <= 100) {
			return Choice{}, fmt.Errorf("sequence: %s is %q; must be from 0 %% to 100 %%", x.name, x.value)
		}
		return Choice{Path: x.name, Name: x.name, Value: x.value, Exact: x.value, si: share / 100}, nil
	}
	var names []string
	for _, u := range known {
		if u.name != x.name && u.path != x.name {
			names = append(names, u.name)
			continue
		}
		si, err := p.size(u, x.value)
		if err != nil {
			return Choice{}, fmt.Errorf("sequence: %s: %w", u.name, err)
		}
		return Choice{Path: u.path, Name: u.name, Value: u.text(si), Exact: u.exact(si), si: si}, nil
	}
	if near := spelling.Near(x.name, names); len(near) > 0 {
		return Choice{}, fmt.Errorf("sequence: the plan has no quantity %q; did you mean %q?", x.name, near[0])
	}
	return Choice{}, fmt.Errorf("sequence: the plan has no quantity %q; there are %s", x.name, strings.Join(names[:min(12, len(names))], ", "))
}

// size reads the value of a quantity, in SI.
func (p *Plan) size(u uncertain, text string) (float64, error) {
	r, err := find(reflect.ValueOf(p).Elem(), u.path)
	if err != nil {
		return 0, err
	}
	v := valueAt(reflect.ValueOf(p).Elem(), r.steps)
	if v.Kind() == reflect.Pointer && pins(v.Type()) {
		q := v.Interface().(*Pins)
		var f unit.Force
		if f.UnmarshalText([]byte(text)) == nil {
			return float64(f), nil
		}
		var d unit.Pressure
		if err := d.UnmarshalText([]byte(text)); err != nil {
			return 0, fmt.Errorf("%w, nor as a force", err)
		}
		if q.Area == 0 {
			return 0, errors.New("its pins stand on no piston; give a force")
		}
		return float64(d) * float64(q.Area), nil
	}
	x, err := readAs(v.Type(), text)
	if err != nil {
		return 0, err
	}
	least, greatest := x.FieldByName("Least").Float(), x.FieldByName("Greatest").Float()
	if least != greatest {
		return 0, fmt.Errorf("%q is a band; one value is wanted", text)
	}
	return least, nil
}
