package main

import (
	_ "embed"
	"fmt"
	"os"
	"strings"
	"time"

	"completion.example/internal/calculator"
	"completion.example/valve/sequence"
)

//go:embed page.html
var page string

// The colours and the drawings' styles are also those of examples/web.
//
//go:embed drawings.css
var drawings string

//go:embed page.css
var look string

// margin is a line of the table of margins.
type margin struct {
	Share string `json:"share"`
	Left  string `json:"left"`
	Limit string `json:"limit"`
	Kind  string `json:"kind"`
	Where string `json:"where"`
	Takes string `json:"takes"`
}

// swatch names a fluid of the drawings.
type swatch struct {
	Class, Name string
}

// content is all that the page shows.
type content struct {
	Plan       *sequence.Plan
	Programme  *sequence.Programme
	Caution    string
	Look       markup
	Paper      string
	Foot       markup
	Date       string
	Revision   string
	Hash       string
	Units      string
	Sentence   string
	Class      string
	Notes      []string
	Findings   []found
	Changes    *changed
	Cards      []card
	Tightest   []margin
	Margins    []margin
	Well       markup
	Phone      markup // the same for a narrow screen
	Stands     int    // the step after which that is
	TwoStrings bool
	Fluids     []swatch
	Sheets     []sheet
	Unchecked  []string
	Appendix   bool
	Ledger     []*picture
	Along      []*picture
	Envelope   *picture
	Risk       *sequence.Risk
	Record     *asRunPart
}

// found is a finding in the reader's units.
type found struct {
	Step    int    `json:"step"`
	Name    string `json:"name"`
	Kind    string `json:"kind"`
	Device  string `json:"device"`
	Says    string `json:"says"`
	Numbers string `json:"numbers"`
	Assumed string `json:"assumed"`
	Cure    string `json:"cure"`
	Until   string `json:"until"`
	Replay  string `json:"replay"`
	Follows string `json:"follows"`
}

// writeReport writes the programme as one HTML file that needs nothing else.
func writeReport(o *options, w *work) error {
	c, err := contentOf(o, w)
	if err != nil {
		return err
	}
	f, err := os.Create(o.report)
	if err != nil {
		return err
	}
	if err := c.fill(f); err != nil {
		f.Close() //nolint:errcheck // the first error counts
		return err
	}
	return f.Close()
}

func contentOf(o *options, w *work) (*content, error) {
	p, u := w.programme, w.read
	c := &content{Plan: w.plan, Programme: p, Caution: calculator.Caution, Look: markup(drawings + look), Date: o.date, Revision: o.revision,
		Hash: w.hash, Units: u.legend(), Sentence: sentence(w), Notes: w.notes, Cards: cards(w), Appendix: !o.floor, Risk: w.risk}
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
	if w.record != nil {
		c.Record = asRunIn(w)
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
	at := w.stands()
	c.Well, c.Phone, c.Stands = wellPicture(w, at, false), wellPicture(w, at, true), at+1
	c.TwoStrings = w.plan.OuterString != nil
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
func inCSS(text string) markup {
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
	return markup(b.String())
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
			Assumed: u.text(f.Assumed), Cure: u.cure(p, &f), Replay: w.replay(f)}
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
