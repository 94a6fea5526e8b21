package sequence

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular"
	"completion.example/valve/sequence/internal/assembly"
)

// written checks what an assembly says in itself, before it is laid out.
func (d *deriver) written() {
	a, f := d.a, &d.faults
	if len(a.Casing) == 0 {
		f.New("assembly.casing", "is missing: what is around the strings")
	}
	if len(a.Strings) == 0 {
		f.New("assembly.strings", "is missing: at least one string is wanted")
	}
	d.bound("assembly.factor", a.Factor)
	for i, c := range a.Casing {
		path := fmt.Sprintf("assembly.casing[%d]", i)
		d.depth(path+".top", c.Top)
		d.depth(path+".bottom", c.Bottom)
		d.bound(path+".factor", c.Factor)
		switch {
		case c.Pipe == nil && c.Hole == 0:
			f.New(path, "wants a pipe, or the diameter of an open hole as \"hole\"")
		case c.Pipe != nil && c.Hole != 0:
			f.New(path, "has a pipe and an open hole; one of them will do")
		case c.Pipe != nil:
			d.pipe(path+".pipe", c.Pipe)
		case !(c.Hole > 0 && c.Hole <= widest):
			f.New(path+".hole", "is %v; must be above 0 in, at most %v", c.Hole, widest)
		}
		if c.Behind != "" && c.Pipe == nil {
			f.New(path+".behind", "belongs to a casing; there is no pipe")
		}
	}
	for i, x := range a.Perforations {
		path := fmt.Sprintf("assembly.perforations[%d]", i)
		d.depth(path+".top", x.Top)
		d.depth(path+".bottom", x.Bottom)
		if !(x.Bottom > x.Top) {
			f.New(path+".bottom", "is %v; must be below the top at %v", x.Bottom, x.Top)
		}
		k := slices.IndexFunc(d.plan.Formations, func(y Formation) bool { return y.Name == x.Formation })
		if k < 0 {
			v := &validation{}
			known(v, path+".formation", "formation", x.Formation, d.plan.Formations, formationName)
			f.Add(v.faults...)
		} else if at := d.plan.Formations[k].MD; at < x.Top || at > x.Bottom {
			f.New(path, "reaches from %v to %v, but formations[%d] (%s) has its pressure at %v", x.Top, x.Bottom, k, x.Formation, at)
		}
	}
	names := map[string]string{}
	for i, t := range a.Strings {
		path := fmt.Sprintf("assembly.strings[%d]", i)
		if t.Name == "" {
			f.New(path+".name", "is missing")
		}
		d.depth(path+".top", t.Top)
		if t.Inside != "" && i != len(a.Strings)-1 {
			f.New(path+".inside", "belongs to the innermost string, which is the last; what is inside %q is around the next one", t.Name)
		}
		if len(t.Pieces) == 0 {
			f.New(path+".tally", "is empty")
		}
		for k, x := range t.Pieces {
			at := fmt.Sprintf("%s.tally[%d]", path, k)
			d.piece(at, x, i == len(a.Strings)-1)
			if name := x.name(); x.Kind != PipeLength && x.Kind != OtherPiece && x.Kind != SealBore && x.Kind != ScreenPiece || x.Name != "" {
				if other, twice := names[name]; twice {
					f.New(at+".name", "%q is that of %s already; give each a name of its own", name, other)
				}
				names[name] = at
			}
		}
	}
	d.writtenLines()
}

const widest = 60 * unit.Inch

func (x Piece) name() string {
	if x.Name == "" {
		return string(x.Kind)
	}
	return x.Name
}

func (d *deriver) depth(path string, z unit.Length) {
	if !(z >= 0 && z <= d.plan.Well.MD) {
		d.faults.New(path, "is %v; must be from 0 ft to the well's depth of %v", z, d.plan.Well.MD)
	}
}

func (d *deriver) bound(path string, factor float64) {
	v := &validation{}
	v.factor(path, factor)
	d.faults.Add(v.faults...)
}

// pipe finds a pipe of the catalogue, once.
func (d *deriver) pipe(path string, p *Pipe) *tubular.Pipe {
	if found, ok := d.piped[path]; ok {
		return found
	}
	pipe, err := p.find(d.pipes)
	if err != nil {
		d.faults.At(path, err)
		d.piped[path] = &tubular.Pipe{}
		return d.piped[path]
	}
	d.piped[path] = &pipe
	return &pipe
}

// piece checks one line of a tally in itself.
func (d *deriver) piece(path string, x Piece, innermost bool) {
	f := &d.faults
	keys, ok := pieceKeys[x.Kind]
	if !ok {
		f.New(path+".kind", "is %q; there are %q", x.Kind, pieceKinds)
		return
	}
	allowed := strings.Split("kind, name, note, pipe, joint, length, top, bottom, od, "+keys, ", ")
	v := reflect.ValueOf(x)
	for i := range v.NumField() {
		key, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
		if !v.Field(i).IsZero() && !slices.Contains(allowed, key) {
			f.New(path+"."+quoted(key), "doesn't belong to %q, which may have %s", x.Kind, strings.Trim(strings.Join(allowed, ", "), ", "))
		}
	}
	if x.Pipe != nil {
		d.pipe(path+".pipe", x.Pipe)
	}
	for _, z := range []struct {
		key string
		z   unit.Length
	}{{"top", x.Top}, {"bottom", x.Bottom}, {"length", x.Length}, {"at", x.At}} {
		d.depth(path+"."+z.key, z.z)
	}
	for _, z := range []struct {
		key string
		z   unit.Length
	}{{"od", x.OD}, {"bore", x.Bore}, {"seal", x.Seal}, {"up", x.Up}, {"down", x.Down}} {
		if !(z.z >= 0 && z.z <= 10*widest) {
			f.New(path+"."+z.key, "is %v; must not be negative, at most %v", z.z, 10*widest)
		}
	}
	d.bound(path+".factor", x.Factor)
	missing := func(key, why string) { f.New(path+"."+quoted(key), "is missing: %s", why) }
	if x.In != "" && x.In != InBore && x.In != InWall {
		f.New(path+".in", "is %q; there are %q and %q", x.In, InBore, InWall)
	}
	if x.Rated.Greatest != 0 && (x.Burst.Greatest != 0 || x.Collapse.Greatest != 0) {
		f.New(path+".rated", "stands beside burst or collapse; it is both at once")
	}
	if len(x.Shifts) > 0 && len(x.Opens)+len(x.Closes) > 0 {
		f.New(path+".shifts", "stands beside opens or closes; it is both at once")
	}
	switch x.Kind {
	case PipeLength:
		if x.Length == 0 && x.Bottom == 0 {
			missing("length", "of a pipe its length, or where its bottom is")
		}
	case SealStack, SealBore:
		if x.Bore == 0 {
			missing("bore", "the diameter at which it seals")
		}
		if x.Kind == SealStack && x.Up == 0 && innermost {
			missing("up", "how far the seals may move up before the first leaves the bore")
		}
	case ReleasePiece:
		if !innermost {
			f.New(path+".kind", "%q belongs to the innermost string, whose pull is known", x.Kind)
		}
		if len(x.Parts) == 0 {
			missing("parts", "at what load its joint parts")
		}
		if x.Seal == 0 {
			missing("seal", "the diameter at which its joint seals")
		}
	case SafetyValve:
		if x.Line == "" {
			missing("line", "the control line that holds it open")
		}
	case ScreenPiece:
		if !(x.Porosity >= 0 && x.Porosity < 1) {
			f.New(path+`.gravel_porosity`, "is %v; must be from 0 to below 1", x.Porosity)
		}
	case SleevePiece, IsolationValve:
		if x.OpenLine == "" && x.CloseLine != "" {
			missing("open_line", "it has a close line")
		}
	case PackerPiece:
		if len(x.Sets) == 0 && len(x.Starts) > 0 {
			missing("sets", "it starts to set")
		}
		if x.Envelope != nil && (x.Free || !innermost || len(x.Sets) == 0) {
			f.New(path+".envelope", "belongs to a packer that holds the innermost string")
		}
	case PlugPiece, OtherPiece:
	}
}

func quoted(key string) string {
	if strings.Contains(key, " ") {
		return `"` + key + `"`
	}
	return key
}

// writtenLines checks the control lines and who names them.
func (d *deriver) writtenLines() {
	f := &d.faults
	made := map[string]string{}
	for i, l := range d.a.Lines {
		path := fmt.Sprintf("assembly.lines[%d]", i)
		if len(l.Names) == 0 {
			f.New(path+".names", "is empty")
		}
		for _, n := range l.Names {
			if other, twice := made[n]; twice || n == "" {
				f.New(path+".names", "%q is missing, or stands in %s already", n, other)
			}
			made[n] = path
		}
		if !(l.Size > 0 && l.Size < 10*unit.Inch && l.Wall > 0 && 2*l.Wall < l.Size) {
			f.New(path, "has size %v and wall %v; two walls must be less than the size", l.Size, l.Wall)
		}
		if l.Fluid == "" {
			f.New(path+".fluid", "is missing")
		}
		if l.Yield != 0 && (l.Burst.Greatest != 0 || l.Collapse.Greatest != 0) {
			f.New(path+".yield", "stands beside burst or collapse; its ratings follow from one of them")
		}
		if _, err := l.ratings(); err != nil && l.Wall > 0 && 2*l.Wall < l.Size {
			f.New(path+".yield", "gives no ratings: %v", err)
		}
		d.bound(path+".factor", l.Factor)
	}
	used := map[string]bool{}
	for i, t := range d.a.Strings {
		for k, x := range t.Pieces {
			for key, n := range map[string]string{"line": x.Line, "open_line": x.OpenLine, "close_line": x.CloseLine} {
				used[n] = true
				if _, ok := made[n]; n != "" && !ok {
					f.New(fmt.Sprintf("assembly.strings[%d].tally[%d].%s", i, k, quoted(key)), "no line %q in assembly.lines", n)
				}
			}
		}
	}
	for i, l := range d.a.Lines {
		for _, n := range l.Names {
			if n != "" && !used[n] {
				f.New(fmt.Sprintf("assembly.lines[%d].names", i), "nothing in the strings is moved by %q", n)
			}
		}
	}
}

// well is the assembly as its room takes it.
func (d *deriver) well() *assembly.Well {
	w := &assembly.Well{Snap: d.snap}
	for i, c := range d.a.Casing {
		path := fmt.Sprintf("assembly.casing[%d]", i)
		x := assembly.Casing{Path: path, Name: c.name(), Top: float64(c.Top), Bottom: float64(c.Bottom), ID: float64(c.Hole)}
		if c.Pipe != nil {
			q := d.pipe(path+".pipe", c.Pipe)
			x.OD, x.ID = float64(q.OD), float64(q.ID)
		}
		w.Casing = append(w.Casing, x)
	}
	for i, t := range d.a.Strings {
		path := fmt.Sprintf("assembly.strings[%d]", i)
		s := assembly.Tally{Path: path, Name: t.Name, Inside: t.Inside, Around: t.Around, Top: float64(t.Top)}
		if s.Inside == "" {
			s.Inside = t.Name
		}
		if s.Around == "" {
			s.Around = "around " + t.Name
			if i == len(d.a.Strings)-1 {
				s.Around = "annulus"
			}
		}
		for k, x := range t.Pieces {
			at := fmt.Sprintf("%s.tally[%d]", path, k)
			p := assembly.Piece{Path: at, Name: x.name(), Top: float64(x.Top), Bottom: float64(x.Bottom), Length: float64(x.Length), At: float64(x.At),
				OD: float64(x.OD), Below: x.Below, Porosity: x.Porosity, Cuts: x.cuts()}
			if x.Pipe != nil {
				q := d.pipe(at+".pipe", x.Pipe)
				p.Pipe = assembly.Pipe{OD: float64(q.OD), ID: float64(q.ID)}
			}
			switch x.Kind {
			case SealStack:
				p.Seals = float64(x.Bore)
			case SealBore:
				p.Polished = float64(x.Bore)
			}
			if i == len(d.a.Strings)-1 && p.Cuts == assembly.Bore {
				p.Cuts = assembly.Nothing // the inside of the innermost string is one compartment
			}
			s.Pieces = append(s.Pieces, p)
		}
		w.Strings = append(w.Strings, s)
	}
	return w
}

func (c Casing) name() string {
	switch {
	case c.Name != "":
		return c.Name
	case c.Pipe == nil:
		return "open hole"
	}
	return "casing " + sizeName(c.Pipe.Size)
}

// sizeName is how the trade calls a pipe's size, without a unit: a name is the same
// whatever units an output is in.
func sizeName(x unit.Length) string {
	const parts = 16
	n := x.In(unit.Inch) * parts
	if whole := math.Round(n); math.Abs(n-whole) < 1e-9*n && whole >= parts {
		a, b := int(whole)/parts, int(whole)%parts
		if b == 0 {
			return strconv.Itoa(a)
		}
		c := parts
		for b%2 == 0 {
			b, c = b/2, c/2
		}
		return fmt.Sprintf("%d-%d/%d", a, b, c)
	}
	return strconv.FormatFloat(x.In(unit.Millimetre), 'g', 6, 64)
}

// cuts is what a piece divides.
func (x Piece) cuts() assembly.Cut {
	switch x.Kind {
	case PackerPiece, SealStack:
		return assembly.Around
	case PlugPiece:
		return assembly.Bore
	case IsolationValve:
		if x.In != InWall {
			return assembly.Bore
		}
	}
	return assembly.Nothing
}
