// Package spelling finds the word that was probably meant.
package spelling

import (
	"cmp"
	"slices"
	"strings"
)

// Distance is the number of letters to insert, delete or replace that turn a into
// b.
//
// Source: Levenshtein 1966.
func Distance(a, b string) int {
	from, to := []rune(a), []rune(b)
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i := range from {
		diagonal := row[0]
		row[0] = i + 1
		for j := range to {
			replace := diagonal
			if from[i] != to[j] {
				replace++
			}
			diagonal = row[j+1]
			row[j+1] = min(replace, row[j]+1, diagonal+1)
		}
	}
	return row[len(to)]
}

// Near are the known words that are like word, the most alike first: those that
// half of its letters turn into, and those that it is a part of. There are at most
// three.
func Near(word string, known []string) []string {
	type one struct {
		name string
		far  int
	}
	var all []one
	low := strings.ToLower(word)
	for _, k := range known {
		d := Distance(low, strings.ToLower(k))
		if strings.Contains(strings.ToLower(k), low) && low != "" {
			d = min(d, 1)
		}
		if d <= len([]rune(word))/2 {
			all = append(all, one{k, d})
		}
	}
	slices.SortStableFunc(all, func(a, b one) int { return cmp.Compare(a.far, b.far) })
	var names []string
	for _, x := range all[:min(3, len(all))] {
		names = append(names, x.name)
	}
	return names
}
