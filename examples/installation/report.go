package main

import (
	_ "embed"
	"fmt"
	"html/template"
	"os"
	"regexp"
	"strings"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
)

//go:embed page.html
var page string

//go:embed page.css
var look string

// sheet is what the page shows of a step.
type sheet struct {
	Number int
	*sequence.StepResult
	Mark, Class string
	Acts        []act
	Bars        []bar
	Apply       []string
	Dense       bool // it needs smaller print to stand on one page
	Moves       []string
	Volumes     []string
	Windows     []string
	Sights      []seen
	Stops       []string
	TestLines   []string
	Facts       []fact
	Open, Shut  []string
	Doubt       []string
	Well        template.HTML
	Parts       []string
	Table       *table
	Picture     *picture
}

// bar is a window with its words.
type bar struct {
	Head    string
	Drawing template.HTML
	Edges   []string
	None    string
}

// fact is a line of what the step leaves behind.
type fact struct{ Head, Text string }

// table is the pressure of every compartment at every device.
type table struct {
	Heads []string
	Rows  [][]string
}

// margin is a line of the table of margins.
type margin struct{ Share, Left, Limit, Kind, Where, Takes string }

// swatch names a fluid of the drawings.
type swatch struct {
	Class, Name string
}

// content is all that the page shows.
type content struct {
	Plan      *sequence.Plan
	Programme *sequence.Programme
	Caution   string
	Look      template.CSS
	Paper     string
	Foot      template.CSS
	Date      string
	Revision  string
	Hash      string
	Units     string
	Sentence  string
	Class     string
	Notes     []string
	Findings  []found
	Changes   *changed
	Cards     []card
	Tightest  []margin
	Margins   []margin
	Well      template.HTML
	Fluids    []swatch
	Sheets    []sheet
	Unchecked []string
	Appendix  bool
	Ledger    []*picture
	Along     []*picture
	Envelope  *picture
	Risk      *sequence.Risk
}

// found is a finding in the reader's units.
type found struct {
	Step                                        int
	Name, Kind, Device, Says, Numbers           string
	Assumed, Cure, Until, Replay, Follows, Head string
}

// writeReport writes the programme as one HTML file that needs nothing else.
func writeReport(o *options, w *work) error {
	c, err := contentOf(o, w)
	if err != nil {
		return err
	}
	t, err := template.New("report").Funcs(template.FuncMap{
		"join":  func(s []string) string { return strings.Join(s, ", ") },
		"whole": whole,
		"title": title,
		"share": share,
	}).Parse(page)
	if err != nil {
		return err
	}
	f, err := os.Create(o.report)
	if err != nil {
		return err
	}
	if err := t.Execute(f, c); err != nil {
		f.Close() //nolint:errcheck // the first error counts
		return err
	}
	return f.Close()
}

func contentOf(o *options, w *work) (*content, error) {
	p, u := w.programme, w.read
	c := &content{Plan: w.plan, Programme: p, Caution: calculator.Caution, Look: template.CSS(look), Date: o.date, Revision: o.revision, //nolint:gosec // our own file
		Hash: w.hash, Units: u.legend(), Sentence: sentence(p), Notes: w.notes, Cards: cards(w), Appendix: !o.floor, Risk: w.risk}
	if c.Date == "" {
		c.Date = time.Now().Format("2 January 2006")
	}
	c.Paper = map[string]string{"a4": "A4", "letter": "letter"}[o.paper]
	foot := "plan " + w.hash
	if o.revision != "" {
		foot += ", revision " + o.revision
	}
	c.Foot = inCSS(foot + ", " + c.Date + "; " + strings.Join([]string{u.symbol(pressure), u.symbol(depth), u.symbol(force), u.symbol(volume)}, ", "))
	c.Class = map[sequence.Verdict]string{sequence.Proved: "good", sequence.Refuted: "bad", sequence.Undecided: "bad"}[p.Verdict]
	c.Findings = foundIn(w)
	if w.before != nil {
		c.Changes = compare(w, o.over)
	}
	for i, m := range p.Margins {
		x := marginLine(w, m)
		if i < 3 {
			c.Tightest = append(c.Tightest, x)
		}
		c.Margins = append(c.Margins, x)
	}
	for i, f := range fluidsOf(w.plan) {
		c.Fluids = append(c.Fluids, swatch{fmt.Sprintf("f%d", i%8), f})
	}
	for _, x := range p.Unchecked {
		c.Unchecked = append(c.Unchecked, u.text(x))
	}
	c.Well = wellPicture(w, 0, false)
	for i := range p.Steps {
		s, err := sheetOf(w, i, c.Appendix)
		if err != nil {
			return nil, err
		}
		c.Sheets = append(c.Sheets, s)
	}
	if !c.Appendix {
		return c, nil
	}
	return c, c.pictures(w)
}

// inCSS writes a text as a string of a style sheet: every sign but letters, digits
// and spaces by its number.
func inCSS(text string) template.CSS {
	b := &strings.Builder{}
	b.WriteByte('"')
	for _, r := range text {
		if r == ' ' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(b, "\\%06x ", r) // the space ends the number
		}
	}
	b.WriteByte('"')
	return template.CSS(b.String()) //nolint:gosec // nothing in it ends the string
}

// pictures are those of the appendix.
func (c *content) pictures(w *work) error {
	var err error
	if c.Ledger, err = ledger(w); err != nil {
		return err
	}
	if c.Along, err = along(w); err != nil {
		return err
	}
	if w.plan.Holding != nil {
		c.Envelope, err = envelope(w.read, w.plan.Holding.Envelope, w.programme)
	}
	return err
}

func foundIn(w *work) []found {
	p, u := w.programme, w.read
	var all []found
	for _, f := range p.Findings {
		x := found{Step: numberOf(p, f.Step), Name: f.Step, Kind: string(f.Kind), Device: f.Device, Says: u.text(f.Says), Numbers: u.text(f.Numbers),
			Assumed: u.text(f.Assumed), Cure: u.text(f.Cure), Replay: w.replay(f)}
		if f.Until != "" {
			x.Until = fmt.Sprintf("step %d, %s", numberOf(p, f.Until), f.Until)
		}
		if f.Follows != "" {
			x.Follows = fmt.Sprintf("step %d, %s", numberOf(p, f.Follows), f.Follows)
		}
		all = append(all, x)
	}
	return all
}

func marginLine(w *work, m sequence.Margin) margin {
	x := margin{Share: fmt.Sprintf("%.1f %%", 100*m.Share), Left: w.read.sized(m.Left), Limit: m.Limit, Kind: limitWords(m.Kind), Where: where(w.programme, m)}
	var takes []string
	for _, s := range m.Slopes {
		takes = append(takes, s.Input+" "+w.read.sized(s.Takes))
	}
	x.Takes = strings.Join(takes, ", ")
	return x
}

// unbroken finds where a line must not break: between a number and its unit.
var unbroken = regexp.MustCompile(`(\d) ([a-zA-Z%])`)

// whole keeps numbers and units in one line, and an arrow with what stands
// before it.
func whole(text string) string {
	return strings.ReplaceAll(unbroken.ReplaceAllString(text, "$1\u00a0$2"), " →", "\u00a0→")
}

func sheetOf(w *work, i int, appendix bool) (sheet, error) {
	s, u := &w.programme.Steps[i], w.read
	x := sheet{Number: i + 1, StepResult: s, Mark: mark(w.programme, s), Class: "good", Acts: u.acts(w.plan, i, s), Apply: u.apply(s),
		Sights: u.sights(s), Stops: u.stops(s), Well: wellPicture(w, i, true)}
	switch {
	case s.Follows != "":
		x.Class = "depends"
	case !s.OK:
		x.Class = "bad"
	}
	x.Dense = len(s.Windows) > 3 || len(s.Events) > 5
	for n := range s.Windows {
		win := &s.Windows[n]
		verb, of := held(s, win)
		b := bar{Head: verb + " " + of, Edges: u.edges(s, win)}
		if times := repeats(w.plan, i, win); times > 1 {
			b.Head += fmt.Sprintf(", %d times", times)
		}
		if win.Open() {
			b.Drawing = windowBar(u, s, win)
		} else {
			b.None = u.limits(s, win)
		}
		x.Bars = append(x.Bars, b)
		if !(verb == "bleed" && win.Open() && len(b.Edges) == 0) { // what may end anywhere needs no word in the schedule
			x.Windows = append(x.Windows, verb+" "+of+": "+u.limits(s, win))
		}
	}
	x.schedule(u)
	for _, t := range s.Tests {
		x.TestLines = append(x.TestLines, u.tested(t))
	}
	for _, t := range s.Partings {
		x.Parts = append(x.Parts, u.parting(t))
	}
	x.Open, x.Shut, x.Doubt = doors(w.plan, s)
	x.facts(u)
	if !appendix {
		return x, nil
	}
	x.Table = tableOf(u, s)
	var err error
	x.Picture, err = pressureWithDepth(u, s)
	return x, err
}

// schedule are the short words of the schedule: what is completed, fluids that are
// swapped, and the most that pressure takes.
func (x *sheet) schedule(u reader) {
	for _, e := range x.Events {
		if e.Partial != "" {
			continue
		}
		text := e.Action
		if at := u.readings(e.Surface); len(at) > 0 {
			text += " at " + strings.Join(at, ", ")
		}
		if e.Pull != 0 {
			text += " at " + u.of(e.Pull)
		}
		x.Moves = append(x.Moves, text)
	}
	for _, z := range x.Zones {
		x.Moves = append(x.Moves, fmt.Sprintf("%s gives %s", z.Formation, u.of(z.Rate)))
	}
	largest := map[string]unit.Volume{}
	var order []string
	for _, v := range x.StepResult.Volumes {
		if fluid, ok := cutSwap(v.What); ok {
			x.Volumes = append(x.Volumes, fmt.Sprintf("%s of %s into %s", u.size(v.Volume), fluid, v.Compartment))
			continue
		}
		if _, known := largest[v.Compartment]; !known && v.Volume > 0 {
			order = append(order, v.Compartment)
		}
		largest[v.Compartment] = max(largest[v.Compartment], v.Volume)
	}
	for _, c := range order {
		x.Volumes = append(x.Volumes, fmt.Sprintf("%s takes %s", c, u.size(largest[c])))
	}
}

// facts are what the step leaves behind.
func (x *sheet) facts(u reader) {
	s := x.StepResult
	add := func(head, format string, args ...any) {
		x.Facts = append(x.Facts, fact{head, fmt.Sprintf(format, args...)})
	}
	if t, ok := nearest(s); ok {
		add("nearest", "%s: feels %s, moves from %s; %s left", t.Action, u.of(extreme(t)), u.of(near(t)), u.of(t.Margin))
	}
	if r, ok := mostUsed(s); ok {
		add("rating", "%.0f %% of %s", 100*r.Usage, r.Name)
	}
	if at, ok := mostLoaded(s); ok {
		add("string", "%s", u.string(at))
	}
	for _, b := range s.Balance {
		add("balance", "%s against %s: %s", b.Compartment, b.Formation, u.balance(b.Overbalance))
	}
	var standing, lost []string
	for _, b := range s.Barriers {
		text := b.Name
		if len(b.Tested) > 0 {
			text += " (tested from " + strings.Join(b.Tested, " and ") + ")"
		}
		if b.Stands {
			standing = append(standing, text)
		}
		if b.Lost {
			lost = append(lost, b.Name)
		}
	}
	if len(standing) > 0 {
		add("barriers", "%s", strings.Join(standing, ", "))
	}
	if len(lost) > 0 {
		add("given up", "%s", strings.Join(lost, ", "))
	}
	if len(s.Unknown) > 0 {
		add("UNKNOWN", "from here on it isn't known what state these are in: %s", strings.Join(s.Unknown, ", "))
	}
}

func tableOf(u reader, s *sequence.StepResult) *table {
	t := &table{Heads: []string{"device", "TVD, " + u.symbol(depth), "compartment"}}
	for _, p := range s.Points {
		t.Heads = append(t.Heads, p.Label)
	}
	for k, at := range s.Points[0].Pressures {
		row := []string{at.Device, u.number(at.TVD, depth), at.Compartment}
		for _, p := range s.Points {
			row = append(row, u.number(p.Pressures[k].Pressure, pressure))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
