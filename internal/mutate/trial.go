package main

import (
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"time"
)

// trial is what came of a package's mutations.
type trial struct {
	pkg                string
	noticed, survivors []Mutation
	unbuilt            int // no program
	late               int // noticed by running out of time alone
	tried, chosen      int
	took               time.Duration
}

func tryPackage(r request, root string, s *source, all []listed, only map[identity]bool, out io.Writer) (trial, error) {
	t := trial{pkg: s.name}
	start := time.Now()
	if r.list {
		for _, m := range r.chosen(mutate(s, 0, nil, nil).mutations, only) {
			fmt.Fprintln(out, m)
		}
		return t, nil
	}
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		return t, err
	}
	defer os.RemoveAll(dir)
	b := &bench{root: root, dir: dir}
	p, own, overlay, err := b.buildSwitched(s)
	if err != nil {
		return t, err
	}
	switches := 0
	for _, m := range p.mutations {
		switches = max(switches, m.id)
	}
	if err := own.ready(dir, switches, []listed{s.listed}, r.longest); err != nil {
		return t, err
	}
	fmt.Fprintf(out, "%s: %d mutations, %d in switches; own tests take %.1f s; left out: %q\n", s.name, len(p.mutations), switches, own.took.Seconds(), own.skip)
	var others []listed
	if !r.own {
		others = users(s.listed, all, strings.Split(r.without, ","))
	}
	// Those that are always asked come with the package's own.
	bins := []*binary{&own}
	for len(others) > 0 && slices.Contains(firstAsked, others[0].below()) {
		bin, err := b.ready(others[0], overlay, switches, []listed{s.listed}, r.longest)
		if err != nil {
			return t, err
		}
		bins, others = append(bins, bin), others[1:]
	}
	if r.near {
		others = nil
	}
	var left, single []Mutation
	if r.switched || r.alone {
		p.mutations = slices.DeleteFunc(p.mutations, func(m Mutation) bool { return (m.id == 0) != r.alone })
	}
	chosen := r.chosen(p.mutations, only)
	t.chosen = len(chosen)
	late := func() bool { return r.limit > 0 && time.Since(start) > r.limit }
	for _, m := range chosen {
		if late() {
			break
		}
		t.tried++
		if t.tried%200 == 0 {
			fmt.Fprintf(out, "%s: %d of %d tried, %d s\n", s.name, t.tried, t.chosen, int(time.Since(start).Seconds()))
		}
		switch {
		case m.id == 0:
			single = append(single, m)
		case slices.ContainsFunc(bins, func(bin *binary) bool { return bin.notices(m) }):
			t.noticed = append(t.noticed, m)
		default:
			left = append(left, m)
			if len(others) == 0 && r.known[m.identity()] == "" && !m.Figures {
				fmt.Fprintln(out, "survives so far:", m)
			}
		}
	}
	for _, pkg := range others {
		if len(left) == 0 || late() {
			break
		}
		bin, err := b.ready(pkg, overlay, switches, []listed{s.listed}, r.longest)
		if err != nil {
			return t, err
		}
		left = slices.DeleteFunc(left, func(m Mutation) bool {
			noticed := bin.notices(m)
			if noticed {
				t.noticed = append(t.noticed, m)
			}
			return noticed
		})
	}
	t.survivors, t.late = left, own.late
	for i, m := range single {
		if late() {
			t.tried -= len(single) - i
			break
		}
		builds, noticed, err := b.noticesAlone(s, m)
		switch {
		case err != nil:
			return t, err
		case !builds:
			t.unbuilt++
		case noticed:
			t.noticed = append(t.noticed, m)
		default:
			t.survivors = append(t.survivors, m)
		}
	}
	t.took = time.Since(start)
	return t, nil
}

// firstAsked are the packages whose tests are asked after the package's own,
// whatever it is: the published cases, and the limits on record.
var firstAsked = []string{"internal/validation", "internal/everyslot"}

// worthwhile are the tests that are worth their time where not all of a package are; their parts
// are asked one by one.
var worthwhile = map[string]string{"internal/validation": "TestPublished", "internal/everyslot": "TestLimitsAreOnRecord"}

// users are the packages whose tests are asked after the package's own: those that
// are always asked, then the library packages that import it and aren't below one
// of those to be left out.
func users(s listed, all []listed, without []string) []listed {
	var first, found []listed
	for _, l := range all {
		if l.ImportPath == s.ImportPath || len(l.TestGoFiles)+len(l.XTestGoFiles) == 0 || strings.HasPrefix(l.below(), "examples/") {
			continue
		}
		imports := slices.Concat(l.Imports, l.TestImports, l.XTestImports)
		if slices.Contains(firstAsked, l.below()) {
			first = append(first, l)
		} else if slices.Contains(imports, s.ImportPath) && !isBelow(l.below(), without) {
			found = append(found, l)
		}
	}
	return append(first, found...)
}

// below is the import path below the module.
func (l listed) below() string { return strings.TrimPrefix(l.ImportPath, l.Module.Path+"/") }

func isBelow(pkg string, trees []string) bool {
	return slices.ContainsFunc(trees, func(tree string) bool {
		return tree != "" && (pkg == tree || strings.HasPrefix(pkg, tree+"/"))
	})
}

// print prints the figures of a package.
func (t trial) print(out io.Writer, known map[identity]string) {
	if len(t.noticed)+len(t.survivors) == 0 {
		return
	}
	count := func(ms []Mutation, k Kind) (n, explained, figures int) {
		for _, m := range ms {
			switch {
			case m.Kind != k:
				continue
			case known[m.identity()] != "":
				explained++
			case m.Figures:
				figures++
			}
			n++
		}
		return n, explained, figures
	}
	for _, k := range Kinds {
		noticed, _, _ := count(t.noticed, k)
		survived, explained, figures := count(t.survivors, k)
		if noticed+survived > 0 {
			fmt.Fprintf(out, "%-24s %-8s %4d of %4d noticed (%5.1f %%), %d survive, %d of them with a reason",
				t.pkg, k, noticed, noticed+survived, 100*float64(noticed)/float64(noticed+survived), survived, explained)
			if figures > 0 {
				fmt.Fprintf(out, ", %d between two figures", figures)
			}
			fmt.Fprintln(out)
		}
	}
	if t.tried < t.chosen {
		fmt.Fprintf(out, "%-24s stopped after %d of %d\n", t.pkg, t.tried, t.chosen)
	}
	fmt.Fprintf(out, "%-24s %d s; %d changes make no program; %d were noticed by running out of time alone\n", t.pkg, int(t.took.Seconds()), t.unbuilt, t.late)
}
