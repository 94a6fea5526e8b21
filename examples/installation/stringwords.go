package main

import (
	"fmt"
	"iter"

	"completion.example/hydrostatics/unit"
	"completion.example/valve/sequence"
)

// bothStrings are the strings where a step stands still, by what their lines begin with.
func bothStrings(p sequence.Point) iter.Seq2[string, *sequence.StringAt] {
	return func(yield func(string, *sequence.StringAt) bool) {
		if p.String != nil && !yield("string", p.String) {
			return
		}
		if p.OuterString != nil {
			yield("outer", p.OuterString)
		}
	}
}

func (u reader) string(p sequence.Point, x *sequence.StringAt) string {
	use := fmt.Sprintf("%.0f %% of its %s limit (%s)", 100*x.Usage, x.Limit, p.Label)
	if x.Free {
		return fmt.Sprintf("free: it comes up with %s on the weight indicator, %s", u.of(x.Reading), use)
	}
	text := "weight indicator " + u.of(x.Reading)
	if x.Held {
		text += ", packer bears " + u.pull(x.Packer)
	}
	switch {
	case x.Drag > 0:
		text += ", drag " + u.of(x.Drag) + " on the way up"
	case x.Drag < 0:
		text += ", drag " + u.of(-x.Drag) + " on the way down"
	}
	for _, s := range x.Seals {
		text += fmt.Sprintf(", %s %s since landing", s.Name, u.travel(s.Travel))
	}
	return text + ", " + use
}

// forces writes the three forces of the string at a place: the worst either way over
// all values, and what the step ends with.
func (u reader) forces(x sequence.PlaceForces) string {
	text := "at " + x.Place + ": "
	if f := x.Load; f.Least != 0 || f.Greatest != 0 || f.Final != 0 {
		text += "it bears " + u.between(f, u.pull) + "; "
	} else {
		text += "it holds nothing; "
	}
	return text + "effective force " + u.between(x.Effective, u.tension) + "; wall force " + u.between(x.Wall, u.tension)
}

// passage writes how long a tool may be.
func (u reader) passage(x sequence.Passage) string {
	if !x.Limited {
		return fmt.Sprintf("%s of %s: the string lies straight, any length passes", x.Tool, u.as(x.Diameter, stroke))
	}
	return fmt.Sprintf("%s of %s: up to %s long, by the bend at %s", x.Tool, u.as(x.Diameter, stroke), u.as(x.Longest, depth), u.as(x.At, depth))
}

// setDown writes what weight arrives.
func (u reader) setDown(x *sequence.SetDown) string {
	text := fmt.Sprintf("of all %s slacked off %s arrive at the lower end, of the next %.0f %%", u.of(x.Slacked), u.of(x.Arrives), 100*x.Passes)
	if x.Locked {
		text += ": locked up"
	}
	if x.Helical > 0 {
		text += fmt.Sprintf("; %s of it a helix", u.as(x.Helical, depth))
	}
	return text
}

// between writes the range of a force over a step.
func (u reader) between(f sequence.ForceRange, write func(unit.Force) string) string {
	a, b, end := write(f.Least), write(f.Greatest), write(f.Final)
	switch {
	case a == b && b == end:
		return a
	case a == end:
		return fmt.Sprintf("%s at the end, up to %s (%s)", a, b, f.GreatestAt)
	case f.LeastAt == f.GreatestAt:
		return fmt.Sprintf("%s to %s, at the end %s", a, b, end)
	case b == end:
		return fmt.Sprintf("%s (%s) to %s at the end", a, f.LeastAt, b)
	}
	return fmt.Sprintf("%s (%s) to %s (%s), at the end %s", a, f.LeastAt, b, f.GreatestAt, end)
}

// tension writes a force in the string.
func (u reader) tension(f unit.Force) string {
	if f < 0 {
		return u.of(-f) + " compression"
	}
	return u.of(f) + " tension"
}

// pull writes a load that counts upwards.
func (u reader) pull(f unit.Force) string {
	if f < 0 {
		return u.of(-f) + " down"
	}
	return u.of(f) + " up"
}

func (u reader) travel(l unit.Length) string {
	if l < 0 {
		return u.as(-l, stroke) + " up"
	}
	return u.as(l, stroke) + " down"
}

func (u reader) parting(x sequence.Parting) string {
	text := fmt.Sprintf("%s at %s to %s on the weight indicator (nominal %s)", x.Action, u.of(x.Least), u.of(x.Greatest), u.of(x.Nominal))
	switch {
	case x.Above == 0:
		return text
	case x.Brings != 0:
		return text + fmt.Sprintf("; then %s hang on the hook, %s of them below the joint: the rest", u.of(x.Above), u.of(x.Brings))
	case x.Below == 0:
		return text + fmt.Sprintf("; then %s hang above the joint, and nothing holds what was below it", u.of(x.Above))
	case x.Below < 0:
		return text + fmt.Sprintf("; then %s hang above the joint, and what stays below it pushes up with %s on what holds it", u.of(x.Above), u.of(-x.Below))
	}
	return text + fmt.Sprintf("; then %s hang above the joint, and %s stay below it on what holds them, until a straight pull unseats that", u.of(x.Above), u.of(x.Below))
}
