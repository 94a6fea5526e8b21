package sequence

import (
	"fmt"
	"slices"

	"completion.example/valve/sequence/internal/assembly"
)

// barriers are what stands between each formation and surface: the wellhead; the one
// valve or plug that is the only way out of the formation's space; the fluid over it
// where the assembly counts columns. What its line says is a barrier is one before all.
// A packer by itself isn't counted: with it alone the string is still open.
func (d *deriver) barriers() {
	for _, x := range d.a.Perforations {
		f := x.Formation
		d.out.Barriers = append(d.out.Barriers, Barrier{Name: d.barrierName("wellhead", f), Formation: f, Note: "always"})
		ways := d.waysOut(f)
		if len(ways) == 1 && ways[0].valve {
			w := ways[0]
			d.out.Barriers = append(d.out.Barriers, Barrier{Name: d.barrierName(w.name, f), Formation: f, Port: w.name, Note: "the only way out of the formation's space"})
			if over := d.over(w, f); d.a.Columns && over != "" {
				d.out.Barriers = append(d.out.Barriers, Barrier{Name: "column over " + f, Formation: f, Column: over, Note: "the fluid on the other side of " + w.name})
			}
		}
	}
	for i := range d.Strings {
		for k := range d.Strings[i].Pieces {
			if x := &d.a.Strings[i].Pieces[k]; x.Barrier {
				d.counted(&d.Strings[i].Pieces[k], x)
			}
		}
	}
}

// counted is a piece that counts as a barrier before every formation because its line
// says so.
func (d *deriver) counted(p *assembly.Placed, x *Piece) {
	for _, f := range d.a.Perforations {
		b := Barrier{Name: d.barrierName(p.Name, f.Formation), Formation: f.Formation, Note: "as " + p.Path + " says"}
		switch x.Kind {
		case PackerPiece:
			if len(x.Sets) > 0 {
				b.Action, b.Until = p.Name+": sets", d.part
			}
			if x.Free || len(x.Sets) == 0 {
				b.Until = "" // what parts above it leaves it where it is
			}
		case SafetyValve:
			if len(x.Closes) == 0 || len(x.Opens) == 0 {
				d.faults.New(p.Path+".barrier", "wants the valve's opens and closes: it stands from when it closes until it opens")
				return
			}
			b.Action, b.Until = p.Name+": closes", p.Name+": opens"
		default:
			if !d.joined(p.Name) || d.isBarrier(f.Formation, p.Name) {
				continue
			}
			b.Port = p.Name
		}
		d.out.Barriers = append(d.out.Barriers, b)
	}
}

// isBarrier tells whether a port is a barrier before a formation already.
func (d *deriver) isBarrier(formation, port string) bool {
	return slices.ContainsFunc(d.out.Barriers, func(b Barrier) bool { return b.Formation == formation && b.Port == port })
}

// barrierName is the name of what stands before a formation: the thing's own before
// the first.
func (d *deriver) barrierName(name, formation string) string {
	for _, b := range d.out.Barriers {
		if b.Name == name {
			return name + " for " + formation
		}
	}
	return name
}

// body are the compartments joined to a formation's by what is always open.
func (d *deriver) body(formation string) map[string]bool {
	all := map[string]bool{}
	for _, c := range d.out.Compartments {
		if c.Formation == formation {
			all[c.Name] = true
		}
	}
	d.grow(all)
	return all
}

// waysOut are the ports out of a formation's body.
func (d *deriver) waysOut(formation string) []way {
	body := d.body(formation)
	var all []way
	for _, w := range d.ways {
		if body[w.joins[0]] != body[w.joins[1]] {
			all = append(all, w)
		}
	}
	for _, c := range d.out.Compartments {
		if body[c.Name] && c.Surface {
			return nil // it is open to surface itself
		}
	}
	return all
}

// over is the compartment on the other side of a valve, where it reaches the
// formation's depth.
func (d *deriver) over(w way, formation string) string {
	body := d.body(formation)
	k := slices.IndexFunc(d.plan.Formations, func(f Formation) bool { return f.Name == formation })
	for _, name := range w.joins {
		for _, c := range d.out.Compartments {
			if at := d.plan.Formations[k].MD; c.Name == name && !body[name] && c.TopMD <= at && at <= c.BottomMD {
				return name
			}
		}
	}
	return ""
}

// without takes out what the assembly says isn't to be derived.
func (d *deriver) without() {
	for i, text := range d.a.Without {
		lists := map[string]func(name string) bool{
			"ports.": func(n string) bool {
				return remove(&d.out.Ports, func(x Port) bool { return x.Name == n })
			},
			"devices.": func(n string) bool {
				return remove(&d.out.Devices, func(x Device) bool { return x.Name == n })
			},
			"ratings.": func(n string) bool {
				return remove(&d.out.Ratings, func(x Rating) bool { return x.Name == n })
			},
			"barriers.": func(n string) bool {
				return remove(&d.out.Barriers, func(x Barrier) bool { return x.Name == n })
			},
		}
		found := text == "string" && d.out.String != nil
		if found {
			d.unstring()
		}
		for head, take := range lists {
			if len(text) > len(head) && text[:len(head)] == head {
				found = take(text[len(head):])
			}
		}
		if !found {
			d.faults.New(fmt.Sprintf("assembly.without[%d]", i), "nothing that follows from the tally is called %q; write it as ratings.NAME, barriers.NAME, ports.NAME, devices.NAME or string", text)
		}
	}
}

// unstring leaves the string's movement and loads out: nothing then holds or parts it.
func (d *deriver) unstring() {
	d.out.String, d.out.OuterString, d.out.Holding = nil, nil, nil
	for i := range d.out.Devices {
		for k := range d.out.Devices[i].Actions {
			a := &d.out.Devices[i].Actions[k]
			a.Holds = false
			if a.Axial {
				d.faults.New("assembly.without", "the string can't be left out: %s feels its load", d.out.Devices[i].Name)
			}
		}
	}
}

// remove takes what a test finds out of a list.
func remove[T any](list *[]T, is func(T) bool) bool {
	n := len(*list)
	*list = slices.DeleteFunc(*list, is)
	return len(*list) < n
}
