package main

import (
	"fmt"
	"io"
	"os"
	"regexp"
	"slices"
	"strings"
	"time"
)

// tryRecords asks the tests of some packages alone, of the published cases and the limits on record if none
// is named: they are built once over the switches of all changed packages.
func tryRecords(r request, root string, sources []*source, all []listed, only map[identity]bool, out io.Writer) ([]trial, error) {
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	b := &bench{root: root, dir: dir}
	if b.run, err = regexp.Compile(r.tests); err != nil {
		return nil, err
	}
	asked := firstAsked
	if r.asked != "" {
		asked = strings.Split(r.asked, ",")
	}
	start := time.Now()
	files := map[string][]byte{}
	var trials []trial
	var chosen [][]Mutation
	var changed []listed
	for _, s := range sources {
		p, _, _, err := b.buildSwitched(s)
		if err != nil {
			return nil, err
		}
		for path, text := range p.files {
			files[path] = text
		}
		for _, m := range p.mutations {
			b.from = max(b.from, m.id)
		}
		p.mutations = slices.DeleteFunc(p.mutations, func(m Mutation) bool { return m.id == 0 })
		trials = append(trials, trial{pkg: s.name})
		chosen = append(chosen, r.chosen(p.mutations, only))
		changed = append(changed, s.listed)
	}
	overlay, err := b.overlay(files)
	if err != nil {
		return nil, err
	}
	var bins []*binary
	for _, l := range all {
		if slices.Contains(asked, l.below()) {
			bin, err := b.ready(l, overlay, b.from, changed, r.longest)
			if err != nil {
				return nil, err
			}
			bins = append(bins, bin)
		}
	}
	fmt.Fprintf(out, "%d switches in %d packages, built in %d s\n", b.from, len(sources), int(time.Since(start).Seconds()))
	for _, bin := range bins {
		fmt.Fprintf(out, "%s: %d tests take %.1f s; left out: %q\n", bin.pkg.below(), len(bin.tests), bin.took.Seconds(), bin.skip)
	}
	for i := range trials {
		t := &trials[i]
		begun := time.Now()
		t.chosen, t.tried = len(chosen[i]), len(chosen[i])
		for _, m := range chosen[i] {
			if slices.ContainsFunc(bins, func(bin *binary) bool { return bin.notices(m) }) {
				t.noticed = append(t.noticed, m)
				continue
			}
			t.survivors = append(t.survivors, m)
			if r.known[m.identity()] == "" {
				fmt.Fprintln(out, "survives so far:", m)
			}
		}
		t.took = time.Since(begun)
	}
	return trials, nil
}
