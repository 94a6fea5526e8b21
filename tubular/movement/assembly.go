package movement

import (
	"cmp"
	"fmt"
	"slices"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// Assembly is a string from its hanger to its lower end as it is made up: with
// any number of seals, of places where it can be held, of joints that part. It
// has no state: MakeUp lays it into the well once, Standing says how it stands,
// Conditions what acts on it, and MadeUp.Load answers.
type Assembly struct {
	Sections   []StringSection    `json:"sections"` // from the hanger down to the lower end, tail included
	Path       *hydrostatics.Path `json:"path"`
	Hanger     unit.Length        `json:"hanger"`      // measured depth of the hanger on the path
	HangerSeal unit.Length        `json:"hanger_seal"` // diameter of the hanger's seal in the wellhead; zero: annulus pressure doesn't lift it
	Block      unit.Force         `json:"block"`       // what the weight indicator shows with nothing hung from it

	Seals  []Seal        `json:"seals"`
	Holds  []Hold        `json:"holds"`
	Joints []Joint       `json:"joints"`
	Plugs  []unit.Length `json:"plugs"` // measured depths at which the bore can be closed: the pressure inside may step there
	Hung   []unit.Length `json:"hung"`  // measured depths at which something else hangs on the string or stands on it

	Spacing      unit.Length           `json:"spacing"`       // greatest distance between nodes; zero stands for 10 m
	HelicalOnset float64               `json:"helical_onset"` // as String.HelicalOnset
	Design       tubular.DesignFactors `json:"design"`
	Derating     *tubular.Derating     `json:"derating"` // of the yield strength where temperatures are given; nil: none
}

// Seal is a seal of the string in a polished bore that stands still, or that
// moves with what the string stands in: see Conditions.Around.
type Seal struct {
	MD   unit.Length `json:"md"`   // measured depth when landed
	Bore unit.Length `json:"bore"` // diameter that it seals on
	// Up is how far it may move up before it leaves its bore, Down how far down
	// before it shoulders, both from where it landed; zero means at once.
	Up       unit.Length `json:"up"`
	Down     unit.Length `json:"down"`
	Length   unit.Length `json:"length"`   // of the seal stack: it never engages more; zero is not known
	Friction unit.Force  `json:"friction"` // that it takes to slide, either way: see Conditions.Sliding
	// Locator says that a locator stops the string once it has moved down by Down:
	// then it stands there. Latch says that a latch stops it once it has moved up by
	// Up: then it pulls on it. Without them nothing stops it, and SealLoad.ToShoulder
	// goes negative, or the seals leave their bore.
	Locator bool `json:"locator"`
	Latch   bool `json:"latch"`
}

// Hold is a place where the string can be held: a packer, an anchor, a latch.
// While it doesn't hold it slides like a seal.
type Hold struct {
	MD unit.Length `json:"md"`
	// Bore is the diameter up to which the pressures act on the string there: the
	// seal bore of a packer that the string is stabbed into, the outside of the
	// mandrel for one that it carries. Zero stands for the outside of the pipe.
	Bore   unit.Length `json:"bore"`
	Casing unit.Length `json:"casing"` // bore of the casing, for the force handed on to it; zero: not asked for
}

// Joint is a sealed joint that parts: by shear pins, a latch, or on purpose.
type Joint struct {
	MD   unit.Length `json:"md"`
	Seal unit.Length `json:"seal"` // diameter that it seals on
}

// markKind says what a mark of an assembly is. At one depth they stand in this
// order from above.
type markKind int

const (
	plugMark markKind = iota
	jointMark
	hungMark
	holdMark
	sealMark
)

// mark is a depth at which something steps.
type mark struct {
	kind    markKind
	index   int // in its list of the assembly
	md      float64
	area    float64 // that the pressures act on
	element int     // of no length, between the node above and the one below
}

// MadeUp is an assembly laid into its well. It never changes, so it is safe for
// concurrent use.
type MadeUp struct {
	line
	marks      []mark
	spans      []span // between marks: one more than they are
	inPart     []int  // by node: numbers of the pressures inside and outside
	outPart    []int  //
	own        []int  // by node: the element whose shape it has
	block      float64
	hangerArea float64 // of the hanger's seal, or zero
	topAi      float64
	topAo      float64
	seals      []Seal
	holds      []Hold
	joints     []Joint
	plugs      []unit.Length
	hung       int
	hanger     unit.Length
	end        unit.Length
	deratings  []*tubular.Derating // by section; nil: none
}

// span is the elements between two marks.
type span struct {
	from, to   int // elements, without to
	compliance float64
}

// MakeUp checks the assembly and lays it out: every end of a section, survey
// station, seal, held place, joint, plug and place where something hangs is a
// node, and where something may step it is two. All faults are reported together.
func (a Assembly) MakeUp() (*MadeUp, error) {
	s := String{Sections: a.Sections, Path: a.Path, Hanger: a.Hanger, Spacing: a.Spacing, HelicalOnset: a.HelicalOnset,
		Design: a.Design}
	faults := a.check()
	marks := a.marks()
	breaks := make([]float64, len(marks))
	for i := range marks {
		breaks[i] = marks[i].md
	}
	if faults != nil {
		_, other := s.layDown(nil)
		return nil, fault.Join(scope, faults, other)
	}
	l, err := s.layDown(breaks)
	if err != nil {
		return nil, err
	}
	m := &MadeUp{
		line: l, marks: marks, block: float64(a.Block), hangerArea: disc(a.HangerSeal),
		seals: slices.Clone(a.Seals), holds: slices.Clone(a.Holds), joints: slices.Clone(a.Joints), plugs: slices.Sorted(slices.Values(a.Plugs)),
		hung: len(a.Hung), hanger: a.Hanger, end: a.Sections[len(a.Sections)-1].BottomMD,
	}
	for _, s := range a.Sections {
		d := s.Derating
		if d == nil {
			d = a.Derating
		}
		if d != nil {
			own := *d
			d = &own
		}
		m.deratings = append(m.deratings, d)
	}
	m.topAi, m.topAo = m.bars[0].ai, m.bars[0].ao
	for i := range m.marks {
		m.marks[i].element = l.steps[i]
		if h := &m.marks[i]; h.kind == holdMark && h.area == 0 {
			h.area = m.bars[m.elements[h.element].section].ao
		}
	}
	m.divide()
	return m, nil
}

// divide finds spans, the parts of the pressures, and each node's own element.
func (m *MadeUp) divide() {
	from := 0
	for i := 0; i <= len(m.marks); i++ {
		to := len(m.elements)
		if i < len(m.marks) {
			to = m.marks[i].element
		}
		s := span{from: from, to: to}
		for k := from; k < to; k++ {
			s.compliance += m.elements[k].length * m.bars[m.elements[k].section].perEA
		}
		m.spans = append(m.spans, s)
		from = to + 1
	}
	n := len(m.points)
	m.inPart, m.outPart, m.own = make([]int, n), make([]int, n), make([]int, n)
	in, out, next := 0, 0, 0
	for i := range n {
		m.inPart[i], m.outPart[i] = in, out
		m.own[i] = m.ownElement(i)
		if next < len(m.marks) && m.marks[next].element == i {
			switch m.marks[next].kind {
			case plugMark:
				in++
			case sealMark, holdMark:
				out++
			case jointMark, hungMark:
			}
			next++
		}
	}
}

// ownElement is the element whose shape node i has: the nearest above it that has a
// length in its section, or the one below it.
func (m *MadeUp) ownElement(i int) int {
	section := m.points[i].section
	for k := i - 1; k >= 0 && m.elements[k].section == section && m.points[k].section == section; k-- {
		if m.elements[k].length > 0 {
			return k
		}
	}
	return i // the first node of a section, which has no step
}

// marks are the assembly's, from above.
func (a Assembly) marks() []mark {
	var marks []mark
	for i, x := range a.Joints {
		marks = append(marks, mark{kind: jointMark, index: i, md: float64(x.MD), area: disc(x.Seal)})
	}
	for i, md := range a.Hung {
		marks = append(marks, mark{kind: hungMark, index: i, md: float64(md)})
	}
	for i, x := range a.Holds {
		marks = append(marks, mark{kind: holdMark, index: i, md: float64(x.MD), area: disc(x.Bore)})
	}
	for i, md := range a.Plugs {
		marks = append(marks, mark{kind: plugMark, index: i, md: float64(md)})
	}
	for i, x := range a.Seals {
		marks = append(marks, mark{kind: sealMark, index: i, md: float64(x.MD), area: disc(x.Bore)})
	}
	slices.SortStableFunc(marks, func(x, y mark) int {
		return cmp.Or(cmp.Compare(x.md, y.md), cmp.Compare(x.kind, y.kind))
	})
	return marks
}

// StringPart is a length of string along which the pressure on one side has no step.
type StringPart struct {
	TopMD    unit.Length `json:"top_md"`
	BottomMD unit.Length `json:"bottom_md"`
} // measured depths

// OutsideParts returns the parts of the pressure outside, by number from the top:
// a seal or a held place ends one and begins the next, also where nothing is held
// or sealed at present.
func (m *MadeUp) OutsideParts() []StringPart {
	return m.parts(func(k markKind) bool { return k == sealMark || k == holdMark })
}

// InsideParts returns the parts of the pressure inside, by number from the top: a
// plug ends one and begins the next.
func (m *MadeUp) InsideParts() []StringPart {
	return m.parts(func(k markKind) bool { return k == plugMark })
}

func (m *MadeUp) parts(ends func(markKind) bool) []StringPart {
	if m == nil {
		return nil
	}
	top, parts := m.hanger, []StringPart(nil)
	for i := range m.marks {
		if ends(m.marks[i].kind) {
			md := unit.Length(m.marks[i].md)
			parts, top = append(parts, StringPart{top, md}), md
		}
	}
	return append(parts, StringPart{top, m.end})
}

// Size returns the number of nodes.
func (m *MadeUp) Size() int {
	if m == nil {
		return 0
	}
	return len(m.points)
}

// NotChecked lists what nothing is checked against because it isn't known: the
// strength of a body without a yield strength, and the ratings of connections.
func (m *MadeUp) NotChecked() []string {
	if m == nil {
		return nil
	}
	var out []string
	for k := range m.sections {
		if !m.rated[k] {
			out = append(out, fmt.Sprintf("section %d to %s: the body, its yield strength isn't known", k+1, m.sections[k].BottomMD.Rounded(6)))
		}
		c := m.connections[k]
		switch missing := c.Unknown(); {
		case !c.Known():
			out = append(out, fmt.Sprintf("section %d to %s: the connection, of which nothing is known", k+1, m.sections[k].BottomMD.Rounded(6)))
		case len(missing) > 0:
			out = append(out, fmt.Sprintf("section %d to %s: the connection in %s", k+1, m.sections[k].BottomMD.Rounded(6), list(missing)))
		}
	}
	return out
}

func list(words []string) string {
	text := words[0]
	for i, w := range words[1:] {
		if i == len(words)-2 {
			text += " and " + w
		} else {
			text += ", " + w
		}
	}
	return text
}
