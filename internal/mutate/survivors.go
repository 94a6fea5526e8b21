package main

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
)

//go:embed survivors.csv
var embedded string

var header = []string{"package", "file", "declaration", "line", "byte", "old", "new", "kind", "reason"}

// readEmbedded returns the reasons of the committed survivors.
func readEmbedded() (map[identity]string, error) {
	rows, err := readTable(strings.NewReader(embedded))
	if err != nil {
		return nil, fmt.Errorf("survivors.csv: %w", err)
	}
	reasons := map[identity]string{}
	for id, reason := range rows {
		if strings.TrimSpace(reason) == "" {
			return nil, fmt.Errorf("survivors.csv: %v has no reason", id)
		}
		reasons[id] = reason
	}
	return reasons, nil
}

func readTable(r io.Reader) (map[identity]string, error) {
	rows, err := csv.NewReader(r).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || !slices.Equal(rows[0], header) {
		return nil, fmt.Errorf("the first line must be %s", strings.Join(header, ","))
	}
	table := map[identity]string{}
	for _, row := range rows[1:] {
		at, err := strconv.Atoi(row[4])
		if err != nil {
			return nil, err
		}
		table[identity{row[0], row[1], row[2], row[3], at, row[5], row[6]}] = row[8]
	}
	return table, nil
}

func readOnly(path string) (map[identity]bool, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	table, err := readTable(f)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	only := map[identity]bool{}
	for id := range table {
		only[id] = true
	}
	return only, nil
}

func writeSurvivors(path string, survivors []Mutation, known map[identity]string) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	w := csv.NewWriter(f)
	rows := [][]string{header}
	for _, m := range survivors {
		rows = append(rows, []string{m.Package, m.File, m.Decl, m.Line, strconv.Itoa(m.At), m.Old, m.New, string(m.Kind), known[m.identity()]})
	}
	if err := w.WriteAll(rows); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}
