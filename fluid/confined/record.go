package confined

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
)

// Sample is one line of a pressure test's record.
type Sample struct {
	At          time.Duration    `json:"at"`
	Pressure    unit.Pressure    `json:"pressure"`
	Temperature unit.Temperature `json:"temperature"` // zero where it wasn't recorded
}

// Record is a pressure test as recorded, in order of time.
type Record []Sample

// mostTime is as far from its zero as a record's clock may stand.
const mostTime = 1_000_000_000 * time.Second

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
		return nil, fault.NewIn("confined", "line 1", "is missing: %w", err)
	}
	columns, err := readHead(head)
	if err != nil {
		return nil, err
	}
	var record Record
	f := fault.In("confined")
	for wrong := 0; wrong < 10; {
		line, err := in.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			f.Add(err)
			break
		}
		at, _ := in.FieldPos(0)
		if len(record) >= mostSamples {
			f.New("", "more than %d samples; must be at most that many", mostSamples)
			break
		}
		var s Sample
		for i, c := range columns {
			if err := c.read(strings.TrimSpace(line[i]), &s); err != nil {
				f.At(fmt.Sprintf("line %d.%s", at, c.name), err)
				wrong++
			}
		}
		record = append(record, s)
	}
	if f.Any() {
		return nil, f.Err()
	}
	return record, record.Validate()
}

// column is one of a record's columns.
type column struct{ name, unit string }

func readHead(head []string) ([]column, error) {
	f := fault.In("confined")
	var columns []column
	seen := map[string]bool{}
	for _, h := range head {
		name, u, _ := strings.Cut(strings.TrimSpace(strings.TrimPrefix(h, "\ufeff")), "/")
		c := column{strings.TrimSpace(name), strings.TrimSpace(u)}
		switch c.name {
		case "time", "pressure", "temperature":
		default:
			f.New("line 1", "has a column %q; must be time, pressure or temperature", c.name)
			continue
		}
		if seen[c.name] {
			f.New("line 1", "has the column %q twice; must have it once", c.name)
		}
		seen[c.name] = true
		// A unit that isn't one shows with any number.
		if err := c.read("300", new(Sample)); c.unit != "" && err != nil {
			f.New("line 1", "column %q: %w", h, err)
		}
		columns = append(columns, c)
	}
	for _, name := range []string{"time", "pressure"} {
		if !seen[name] {
			f.New("line 1", "has no column %q; must have one", name)
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
		return 0, fmt.Errorf("unit of time is %q; must be s, min or h", u)
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

// Validate reports what makes r no record: fewer than two samples, time that
// doesn't rise, a pressure below zero, temperatures in some samples only.
func (r Record) Validate() error {
	f := fault.In("confined")
	if len(r) < 2 {
		f.New("", "has %d samples; must have at least two", len(r))
		return f.Err()
	}
	measured := r[0].Temperature != unit.Temperature{}
	faults := 0
	for i, s := range r {
		at := fault.Index("", i)
		before := faults
		f.Add(fault.Duration(at+".At", s.At, -mostTime, mostTime))
		if s.At < -mostTime || s.At > mostTime {
			faults++
		}
		// As far as arithmetic in seconds can tell.
		if i > 0 && s.At.Seconds() <= r[i-1].At.Seconds() {
			f.New(at+".At", "is %v; must be after the sample before it, at %v", s.At, r[i-1].At)
			faults++
		}
		if !(s.Pressure >= 0 && s.Pressure <= mostTrapped) {
			f.New(at+".Pressure", "is %v; must be from 0 psi to %s", s.Pressure, mostTrapped.Rounded(6))
			faults++
		}
		if (s.Temperature != unit.Temperature{}) != measured {
			f.New(at+".Temperature", "is given in some samples; must be in all or in none")
			faults++
		} else if k := s.Temperature.Kelvin(); measured && !(k >= 100 && k <= 1500) {
			f.New(at+".Temperature", "is %v; must be from 100 K to 1500 K", s.Temperature)
			faults++
		}
		if faults > before && faults >= 10 {
			break
		}
	}
	return f.Err()
}
