package catalogue

import (
	"encoding"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strings"

	"completion.example/internal/fault"
)

// header is the first line of a list of pipes.
const header = "kind,od,weight,finish,wall,id,drift,coupling,short_thread,long_thread,status,source"

// Read reads a list of pipes as CSV, to be given to Catalogue.With. Its first
// line is
//
//	kind,od,weight,finish,wall,id,drift,coupling,short_thread,long_thread,status,source
//
// and sizes and weights carry their units: "2-7/8 in", "6.5 lb/ft". Coupling and
// thread lengths may be empty. All faults are reported, each with its line.
func Read(r io.Reader) ([]Entry, error) {
	records := csv.NewReader(r)
	columns := strings.Split(header, ",")
	records.FieldsPerRecord = len(columns)
	first, err := records.Read()
	if err != nil {
		return nil, fmt.Errorf("catalogue: %w", err)
	}
	if !slices.Equal(first, columns) {
		return nil, fault.NewIn("catalogue", "line 1", "is %q; must be %q", strings.Join(first, ","), header)
	}
	var entries []Entry
	f := fault.In("catalogue")
	for {
		fields, err := records.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			f.Add(err)
			return nil, f.Err()
		}
		e, err := entry(columns, fields)
		if err == nil {
			err = e.Validate()
		}
		if err != nil {
			line, _ := records.FieldPos(0)
			f.At(fmt.Sprintf("line %d", line), err)
			continue
		}
		entries = append(entries, e)
	}
	if err := f.Err(); err != nil {
		return nil, err
	}
	return entries, nil
}

func entry(columns, fields []string) (Entry, error) {
	var e Entry
	f := fault.In("catalogue")
	e.Kind, e.Finish = Kind(fields[0]), Finish(fields[3])
	e.Status, e.Source = Provenance(fields[10]), fields[11]
	for i, to := range []encoding.TextUnmarshaler{1: &e.OD, 2: &e.Weight, 4: &e.Wall, 5: &e.ID, 6: &e.Drift,
		7: &e.Coupling, 8: &e.ShortThread, 9: &e.LongThread} {
		if to == nil || fields[i] == "" && i >= 7 {
			continue
		}
		if err := to.UnmarshalText([]byte(fields[i])); err != nil {
			f.At(columns[i], err)
		}
	}
	return e, f.Err()
}
