package main

import (
	"embed"
	"path"
	"strings"
)

//go:embed plans/*.json
var plans embed.FS

// samples are the plans that a page offers, by their names.
func samples() map[string][]byte {
	all := map[string][]byte{"begin": beginField, "begin-si": beginSI}
	files, err := plans.ReadDir("plans")
	if err != nil {
		return all
	}
	for _, f := range files {
		if data, err := plans.ReadFile(path.Join("plans", f.Name())); err == nil {
			all[strings.TrimSuffix(f.Name(), ".json")] = data
		}
	}
	return all
}
