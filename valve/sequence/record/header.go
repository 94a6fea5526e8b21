package record

import (
	"slices"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/spelling"
)

// header reads the line that names the columns, and tells whether it can.
func (x *reading) header(line int, cells []string) bool {
	x.heads = []head{}
	if len(cells) > mostColumns {
		x.fault(line, "", "names %d columns; there may be %d", len(cells), mostColumns)
		return false
	}
	seen := map[string]bool{}
	for _, text := range cells {
		h := head{column: -1}
		h.name, h.unit = cut(text)
		switch name := strings.ToLower(h.name); {
		case seen[name]:
			x.fault(line, h.name, "stands twice")
		case name == "time":
			h.time = true
			x.clock(line, h.unit)
		case name == "step":
			h.step = true
		default:
			x.instrument(line, &h)
		}
		seen[strings.ToLower(h.name)] = true
		x.heads = append(x.heads, h)
	}
	for _, must := range [2]string{"time", "step"} {
		if !seen[must] {
			x.fault(line, "", "names no column %q", must)
		}
	}
	if len(x.record.columns) == 0 && x.count == 0 {
		x.fault(line, "", "names no instrument, such as %s pressure [psi]", first(surfaces(x.plan)))
	}
	x.offset = make([]float64, len(x.record.columns))
	return x.count == 0
}

func first(names []string) string {
	if len(names) == 0 {
		return "tubing"
	}
	return names[0]
}

// cut parts a head from the unit in its brackets.
func cut(text string) (name, unit string) {
	text = strings.TrimSpace(text)
	if i := strings.LastIndexByte(text, '['); i >= 0 && strings.HasSuffix(text, "]") {
		return strings.TrimSpace(text[:i]), strings.TrimSpace(text[i+1 : len(text)-1])
	}
	return text, ""
}

// clock reads the unit of the time.
func (x *reading) clock(line int, name string) {
	switch name {
	case "":
	case "s":
		x.seconds = 1
	case "min":
		x.seconds = 60
	case "h":
		x.seconds = 3600
	default:
		x.fault(line, "time", "has the unit %q; there are s, min and h, or none for clock times", name)
	}
}

// instrument reads the head of an instrument.
func (x *reading) instrument(line int, h *head) {
	c := column{head: h.name}
	var err error
	switch i := strings.LastIndexByte(h.name, ' '); {
	case strings.EqualFold(h.name, "weight"):
		c.what = weight
		_, err = unit.Read[unit.Force]("1 " + h.unit)
	case i > 0 && strings.EqualFold(h.name[i+1:], "pressure"):
		c.what, c.compartment = pressure, strings.TrimSpace(h.name[:i])
		_, err = unit.Read[unit.Pressure]("1 " + h.unit)
	case i > 0 && (strings.EqualFold(h.name[i+1:], "in") || strings.EqualFold(h.name[i+1:], "out")):
		c.what, c.compartment = in, strings.TrimSpace(h.name[:i])
		if strings.EqualFold(h.name[i+1:], "out") {
			c.what = out
		}
		_, err = unit.Read[unit.Volume]("1 " + h.unit)
	default:
		x.fault(line, h.name, "is no column; there are time, step, weight, and the name of a compartment with pressure, in or out behind it")
		return
	}
	if h.unit != "" && err != nil {
		x.fault(line, h.name, "%v", err)
		return
	}
	if known := surfaces(x.plan); c.what != weight && !slices.Contains(known, c.compartment) {
		hint := "; there are " + strings.Join(known, ", ")
		if near := spelling.Near(c.compartment, known); len(near) > 0 {
			hint = "; did you mean " + near[0] + "?"
		}
		x.fault(line, h.name, "is of no compartment that reaches the surface%s", hint)
		return
	}
	if c.what == weight && x.plan.String == nil {
		x.fault(line, h.name, "can't be held against a plan without a string")
		return
	}
	h.column = len(x.record.columns)
	x.record.columns = append(x.record.columns, c)
}
