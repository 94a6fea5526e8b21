// Package published holds cases that somebody else published: inputs, the
// printed answer, and where it stands. The tests run them all, and so does
// examples/validation on the user's own machine.
//
// A file is CSV with the columns of header. Inputs are text with units
// ("rho=13.5 lb/gal; depth=12000 ft"); the printed answer is text with its
// unit. Half a unit of the last printed digit is the tolerance, unless a row
// gives another and its note says why.
package published

import (
	"embed"
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strings"
)

//go:embed *.csv
var files embed.FS

// Header is the first line of every case file.
var header = []string{"id", "capability", "inputs", "quantity", "printed", "where", "status", "source", "tolerance", "note"}

// Status says what a case is worth as evidence.
type Status string

// The statuses. Only Published and ReferenceLibrary are counted as outside
// evidence.
const (
	Published        Status = "published"         // inputs and answer read in the source
	ReferenceLibrary Status = "reference-library" // computed with a named version of another library
	CommonPractice   Status = "common-practice"   // in use without a source that can be cited
	Memory           Status = "memory"            // recalled, not read
	Derived          Status = "derived"           // own recomputation of a published equation
	Transcription    Status = "transcription"     // a point of a table that the library holds: guards the copy, proves nothing
	Misprint         Status = "misprint"          // the source is wrong: its figure is kept, and must be missed
)

// Statuses lists all, strongest first.
var Statuses = []Status{Published, ReferenceLibrary, CommonPractice, Memory, Derived, Transcription, Misprint}

// External tells whether a case of this status is outside evidence.
func (s Status) External() bool { return s == Published || s == ReferenceLibrary }

// Case is one row.
type Case struct {
	ID         string
	Capability string // row of the capability list, such as "H1"
	Inputs     string
	Quantity   string // what was computed
	Printed    string // the answer as printed, with its unit
	Where      string // equation, table or page
	Status     Status
	Source     string
	Tolerance  string
	Note       string

	File string
	Line int
}

func (c Case) String() string {
	return fmt.Sprintf("%s:%d %s: %s (%s)", c.File, c.Line, c.ID, c.Quantity, c.Inputs)
}

// Read returns the cases of an embedded file, or every fault in it.
func Read(file string) ([]Case, error) {
	f, err := files.Open(file)
	if err != nil {
		return nil, fmt.Errorf("published: %w", err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	rows, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("published: %s: %w", file, err)
	}
	if len(rows) == 0 || !slices.Equal(rows[0], header) {
		return nil, fmt.Errorf("published: %s: the first line must be %s", file, strings.Join(header, ","))
	}
	var cases []Case
	var faults []error
	for i, row := range rows[1:] {
		c := Case{
			ID: row[0], Capability: row[1], Inputs: row[2], Quantity: row[3], Printed: row[4],
			Where: row[5], Status: Status(row[6]), Source: row[7], Tolerance: row[8], Note: row[9],
			File: file, Line: i + 2,
		}
		if err := c.check(); err != nil {
			faults = append(faults, fmt.Errorf("published: %v: %w", c, err))
		}
		cases = append(cases, c)
	}
	return cases, errors.Join(faults...)
}

func (c Case) check() error {
	var faults []error
	for name, text := range map[string]string{"id": c.ID, "capability": c.Capability, "quantity": c.Quantity, "printed": c.Printed, "source": c.Source} {
		if strings.TrimSpace(text) == "" {
			faults = append(faults, fmt.Errorf("%s is empty", name))
		}
	}
	if !slices.Contains(Statuses, c.Status) {
		faults = append(faults, fmt.Errorf("status %q is none of %v", c.Status, Statuses))
	}
	if c.Status == Misprint && (c.Tolerance != "" || c.Note == "") {
		faults = append(faults, errors.New("a misprint has no tolerance of its own, and a note that says what is wrong"))
	}
	if c.Tolerance != "" && c.Note == "" {
		faults = append(faults, errors.New("a tolerance of its own needs a note that says why"))
	}
	return errors.Join(faults...)
}
