package main

import (
	"flag"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"time"
)

func main() {
	os.Exit(run(os.Args[1:], os.Stdout, os.Stderr))
}

// request is what the flags ask for.
type request struct {
	pkg, survivors, only, file, kind string
	without, asked, tests            string
	sample, from                     int
	limit, longest                   time.Duration
	seed                             uint64
	own, near, list, records         bool
	switched, alone                  bool
	known                            map[identity]string // reasons of the table
}

func run(args []string, out, faults io.Writer) int {
	var r request
	flags := flag.NewFlagSet("mutate", flag.ContinueOnError)
	flags.SetOutput(faults)
	flags.StringVar(&r.pkg, "package", "", "package below the module, such as fluid/flow; several by commas")
	flags.StringVar(&r.survivors, "survivors", "", "file to write the survivors to")
	flags.StringVar(&r.only, "only", "", "file of mutations to try, as written by -survivors")
	flags.StringVar(&r.file, "file", "", "try this file of the package alone")
	flags.StringVar(&r.kind, "kind", "", "try these kinds alone, by commas: literal, count, operator, limit")
	flags.IntVar(&r.sample, "sample", 0, "try so many mutations of each package, drawn by the seed; 0 tries all")
	flags.Uint64Var(&r.seed, "seed", 1, "seed of the sample")
	flags.IntVar(&r.from, "from", 0, "leave out the first so many in the order drawn by the seed: goes on where -for stopped")
	flags.DurationVar(&r.limit, "for", 0, "stop after this time and say how many were tried, in an order drawn by the seed; 0 tries all")
	flags.DurationVar(&r.longest, "longest", 0, "leave out tests that take longer than this; 0 leaves none out")
	flags.StringVar(&r.without, "without", "valve/sequence", "packages, and those below them, whose tests aren't asked when they import the changed one; several by commas")
	flags.BoolVar(&r.own, "own", false, "run the package's own tests alone")
	flags.BoolVar(&r.near, "near", false, "run the package's own tests, the published cases and the limits on record alone, not those of the packages that import it")
	flags.BoolVar(&r.switched, "switched", false, "leave out what must be compiled one by one")
	flags.BoolVar(&r.alone, "alone", false, "try only what must be compiled one by one")
	flags.BoolVar(&r.records, "records", false, "run the published cases and the limits on record alone, built once for all the packages")
	flags.StringVar(&r.asked, "asked", "", "run the tests of these packages alone, built once over all the changed ones; several by commas. So the rooms below valve/sequence are tried, whose tests stand in front of them")
	flags.StringVar(&r.tests, "run", "", "with -asked: only tests whose names match this regular expression")
	flags.BoolVar(&r.list, "list", false, "list the mutations and try none")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if r.pkg == "" || flags.NArg() > 0 {
		fmt.Fprintln(faults, "mutate: name a -package below the module, such as fluid/flow")
		return 2
	}
	unexpected, err := try(r, out)
	if err != nil {
		fmt.Fprintln(faults, "mutate:", err)
		return 1
	}
	if unexpected > 0 {
		return 1
	}
	return 0
}

// try runs the request and returns the number of survivors that the table doesn't know.
func try(r request, out io.Writer) (int, error) {
	root, err := moduleRoot()
	if err != nil {
		return 0, err
	}
	var patterns []string
	for _, p := range strings.Split(r.pkg, ",") {
		patterns = append(patterns, "./"+strings.Trim(p, "./"))
	}
	sources, err := load(root, patterns...)
	if err != nil {
		return 0, err
	}
	all, err := list(root, "-e", "./...")
	if err != nil {
		return 0, err
	}
	known, err := readEmbedded()
	if err != nil {
		return 0, err
	}
	r.known = known
	var only map[identity]bool
	if r.only != "" {
		if only, err = readOnly(r.only); err != nil {
			return 0, err
		}
	}
	var survivors []Mutation
	unexpected := 0
	var trials []trial
	if r.records || r.asked != "" {
		if trials, err = tryRecords(r, root, sources, all, only, out); err != nil {
			return 0, err
		}
	}
	for i, s := range sources {
		var t trial
		if trials != nil {
			t = trials[i]
		} else if t, err = tryPackage(r, root, s, all, only, out); err != nil {
			return 0, err
		}
		for _, m := range t.survivors {
			if _, ok := known[m.identity()]; !ok && !m.Figures {
				unexpected++
				fmt.Fprintln(out, "survives:", m)
			}
		}
		for _, m := range t.noticed {
			if _, ok := known[m.identity()]; ok {
				fmt.Fprintln(out, "noticed now, and still in the table:", m)
			}
		}
		survivors = append(survivors, t.survivors...)
		t.print(out, known)
	}
	if r.survivors != "" {
		if err := writeSurvivors(r.survivors, survivors, known); err != nil {
			return 0, err
		}
	}
	return unexpected, nil
}

// chosen picks the mutations to try: the sample is the same for the same seed.
func (r request) chosen(all []Mutation, only map[identity]bool) []Mutation {
	var picked []Mutation
	for _, m := range all {
		if (only == nil || only[m.identity()]) && (r.file == "" || m.File == r.file) && (r.kind == "" || slices.Contains(strings.Split(r.kind, ","), string(m.Kind))) {
			picked = append(picked, m)
		}
	}
	most := len(picked)
	if r.sample > 0 {
		most = min(most, r.sample)
	}
	order := rand.New(rand.NewPCG(r.seed, 0)).Perm(len(picked))[min(max(r.from, 0), most):most]
	if r.limit == 0 {
		slices.Sort(order) // by file; what is stopped must not always try the same files
	}
	var sample []Mutation
	for _, i := range order {
		sample = append(sample, picked[i])
	}
	return sample
}
