package main

import (
	"encoding/json"
	"fmt"
	"io"
	"text/tabwriter"

	"completion.example/internal/accuracy"
)

// draws of each formula: a second or two in all.
const draws = 400

// printAccuracy prints how many digits the formulas keep. The exit code is 1 where
// one passes its limit.
func printAccuracy(out, errs io.Writer, asJSON bool) int {
	results := accuracy.Run(draws)
	code := 0
	for _, r := range results {
		if !r.Met() {
			code = 1
		}
	}
	if err := writeAccuracy(out, results, asJSON); err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	return code
}

func writeAccuracy(out io.Writer, results []accuracy.Result, asJSON bool) error {
	if asJSON {
		type row struct {
			Formula string  `json:"formula"`
			Range   string  `json:"range"`
			Draws   int     `json:"draws"`
			Worst   float64 `json:"worst"` // in units of the last place, 2^-52
			Limit   float64 `json:"limit"`
			Met     bool    `json:"met"`
		}
		rows := make([]row, len(results))
		for i, r := range results {
			rows[i] = row{r.Name, r.Range, r.Draws, r.Worst, r.Limit, r.Met()}
		}
		e := json.NewEncoder(out)
		e.SetIndent("", "  ")
		e.SetEscapeHTML(false)
		return e.Encode(rows)
	}
	t := tabwriter.NewWriter(out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "formula\tworst\tlimit\trange")
	for _, r := range results {
		fmt.Fprintf(t, "%s\t%.1f\t%.0f\t%s\n", r.Name, r.Worst, r.Limit, r.Range)
	}
	if err := t.Flush(); err != nil {
		return err
	}
	fmt.Fprintf(out, "\nWorst of %d random inputs to each formula, in units of the last place of a float64, 2^-52 = 2.2e-16 of the answer,\nagainst the same equation in its textbook form worked with 256 binary digits.\n", draws)
	for _, r := range results {
		if !r.Met() {
			fmt.Fprintf(out, "PASSED ITS LIMIT %v\n", r)
		}
	}
	return nil
}
