package confined

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"time"

	"completion.example/fluid/internal/limit"
	"completion.example/hydrostatics/unit"
)

// Sample is one line of a pressure test's record.
type Sample struct {
	At          time.Duration
	Pressure    unit.Pressure
	Temperature unit.Temperature // zero where it wasn't recorded
}

// Record is a pressure test as recorded, in order of time.
type Record []Sample

// mostSamples bounds a record: a week by the second is less.
const mostSamples = 1_000_000

// ReadRecord reads a record from comma-separated text. The first line names the
// columns time, pressure and, if there is one, temperature, each with its unit
// after a slash, in any order:
//
//	time/min,pressure/psi,temperature/degF
//	0,5021,71.5
//	5,5015,71.8
//
// A time's unit is s, min or h. A column without a unit has values that carry
// their own ("5021 psi", "5m0s"). Lines that begin with # are comments. Faults
// are reported together, by line, up to ten of them.
func ReadRecord(r io.Reader) (Record, error) {
	in := csv.NewReader(r)
	in.Comment = '#'
	in.TrimLeadingSpace = true
	in.ReuseRecord = true
	head, err := in.Read()
	if err != nil {
		return nil, fmt.Errorf("confined: record of a pressure test: no first line: %w", err)
	}
	columns, err := readHead(head)
	if err != nil {
		return nil, err
	}
	var record Record
	var faults []error
	for len(faults) < 10 {
		line, err := in.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			faults = append(faults, fmt.Errorf("confined: record: %w", err))
			break
		}
		at, _ := in.FieldPos(0)
		if len(record) >= mostSamples {
			faults = append(faults, fmt.Errorf("confined: record: more than %d samples", mostSamples))
			break
		}
		var s Sample
		for i, c := range columns {
			if err := c.read(strings.TrimSpace(line[i]), &s); err != nil {
				faults = append(faults, fmt.Errorf("confined: record, line %d, %s: %w", at, c.name, err))
			}
		}
		record = append(record, s)
	}
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	return record, record.Check()
}

// column is one of a record's columns.
type column struct{ name, unit string }

func readHead(head []string) ([]column, error) {
	f := limit.Faults{Scope: "confined"}
	var columns []column
	seen := map[string]bool{}
	for _, h := range head {
		name, u, _ := strings.Cut(strings.TrimSpace(strings.TrimPrefix(h, "\ufeff")), "/")
		c := column{strings.TrimSpace(name), strings.TrimSpace(u)}
		switch c.name {
		case "time", "pressure", "temperature":
		default:
			f.Add("record: column %q is none of time, pressure, temperature", c.name)
			continue
		}
		if seen[c.name] {
			f.Add("record: column %q stands twice", c.name)
		}
		seen[c.name] = true
		// A unit that isn't one shows with any number.
		if err := c.read("300", new(Sample)); c.unit != "" && err != nil {
			f.Add("record: column %q: %v", h, err)
		}
		columns = append(columns, c)
	}
	for _, name := range []string{"time", "pressure"} {
		if !seen[name] {
			f.Add("record: no column %q in the first line", name)
		}
	}
	return columns, f.Err()
}

// read puts one value into s.
func (c column) read(text string, s *Sample) error {
	if c.unit != "" {
		if c.name == "time" {
			t, err := readTime(text, c.unit)
			s.At = t
			return err
		}
		text += " " + c.unit
	}
	switch c.name {
	case "time":
		t, err := time.ParseDuration(text)
		s.At = t
		return err
	case "pressure":
		return s.Pressure.UnmarshalText([]byte(text))
	default:
		return s.Temperature.UnmarshalText([]byte(text))
	}
}

func readTime(text, u string) (time.Duration, error) {
	per := map[string]time.Duration{"s": time.Second, "min": time.Minute, "h": time.Hour}[u]
	if per == 0 {
		return 0, fmt.Errorf("%q is not a unit of time here; s, min and h are", u)
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, fmt.Errorf("%q is not a number of %s", text, u)
	}
	if x *= per.Seconds(); !(x >= -1e9 && x <= 1e9) {
		return 0, fmt.Errorf("%s %s is more than a record can span", text, u)
	}
	return time.Duration(x * float64(time.Second)), nil
}

// Check reports what makes r no record: fewer than two samples, time that
// doesn't rise, a pressure below zero, temperatures in some samples only.
func (r Record) Check() error {
	f := limit.Faults{Scope: "confined"}
	if len(r) < 2 {
		f.Add("record: %d samples; there must be at least two", len(r))
		return f.Err()
	}
	measured := r[0].Temperature != unit.Temperature{}
	faults := 0
	for i, s := range r {
		at := limit.Index("record", i)
		before := faults
		f.Seconds(at+".At", s.At.Seconds(), -1e9, 1e9)
		if !(math.Abs(s.At.Seconds()) <= 1e9) {
			faults++
		}
		// As far as arithmetic in seconds can tell.
		if i > 0 && s.At.Seconds() <= r[i-1].At.Seconds() {
			f.Add("%s.At is %v, and the sample before it is at %v; time must rise", at, s.At, r[i-1].At)
			faults++
		}
		if !(s.Pressure >= 0 && s.Pressure <= mostTrapped) {
			f.Add("%s.Pressure is %v; it must be between 0 psi and %s", at, s.Pressure, mostTrapped.Rounded(6))
			faults++
		}
		if (s.Temperature != unit.Temperature{}) != measured {
			f.Add("%s.Temperature: a record has temperatures in all samples or in none", at)
			faults++
		} else if k := s.Temperature.Kelvin(); measured && !(k >= 100 && k <= 1500) {
			f.Add("%s.Temperature is %v; it must be between 100 K and 1500 K", at, s.Temperature)
			faults++
		}
		if faults > before && faults >= 10 {
			break
		}
	}
	return f.Err()
}
