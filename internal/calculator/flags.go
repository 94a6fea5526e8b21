package calculator

import (
	"errors"
	"flag"
	"fmt"
	"math"
	"strings"
	"time"

	"completion.example/internal/spelling"
)

// Parse reads args into flags and returns every fault, not only the first.
func Parse(flags *flag.FlagSet, args []string) error {
	var faults []error
	for {
		err := flags.Parse(args)
		if errors.Is(err, flag.ErrHelp) {
			return err
		}
		if err == nil {
			break
		}
		args = flags.Args()
		if name, unknown := strings.CutPrefix(err.Error(), "flag provided but not defined: -"); unknown {
			err = fmt.Errorf("no flag -%s%s", name, suggestion(flags, name))
			if now, ok := renamed[flags.Name()][name]; ok {
				err = fmt.Errorf("no flag -%s any more: it is -%s", name, now)
			}
			if len(args) > 0 && !strings.HasPrefix(args[0], "-") {
				args = args[1:] // the value that was meant for it
			}
		}
		faults = append(faults, wanted(flags, err))
	}
	for _, a := range flags.Args() {
		faults = append(faults, fmt.Errorf("%q belongs to no flag; a value with a space wants quotes", a))
	}
	flags.VisitAll(func(f *flag.Flag) {
		if g, ok := f.Value.(flag.Getter); ok {
			if x, ok := g.Get().(float64); ok && (math.IsNaN(x) || math.IsInf(x, 0)) {
				faults = append(faults, fmt.Errorf("-%s is %v; it must be a finite number", f.Name, x))
			}
		}
	})
	return errors.Join(faults...)
}

// wanted says what to write for a flag whose text the standard library calls a parse
// error.
func wanted(flags *flag.FlagSet, err error) error {
	text, unread := strings.CutSuffix(err.Error(), ": parse error")
	value, name, _ := strings.Cut(strings.Replace(text, " for -", " for flag -", 1), " for flag -")
	f := flags.Lookup(name)
	if !unread || f == nil {
		return err
	}
	write := "a number such as 0.05"
	if g, ok := f.Value.(flag.Getter); ok {
		switch g.Get().(type) {
		case bool:
			write = "true or false"
		case int:
			write = "a whole number such as 6"
		case time.Duration:
			write = "a time such as 30m or 1h30m"
		}
	}
	return fmt.Errorf("%s for flag -%s: write %s", strings.Replace(value, "boolean ", "", 1), name, write)
}

// suggestion names the flag that was probably meant.
func suggestion(flags *flag.FlagSet, name string) string {
	best, least := "", len(name)/2+1
	flags.VisitAll(func(f *flag.Flag) {
		if d := spelling.Distance(name, f.Name); d < least {
			best, least = f.Name, d
		}
	})
	if best == "" {
		return ""
	}
	return "; did you mean -" + best + "?"
}

// input is a flag as it was understood, without loss and for people.
type input struct{ name, value, people string }

// inputDigits of a value that no person typed, such as one turned into another
// unit; values in fewer digits are shown as they are.
const inputDigits = 8

// understood writes a flag's value for people.
func understood(v flag.Value) string {
	text := v.String()
	if !long(text) {
		return text
	}
	if g, ok := v.(flag.Getter); ok {
		if q, ok := g.Get().(interface{ Rounded(int) string }); ok {
			return q.Rounded(inputDigits)
		}
	}
	return text
}

// long tells whether text holds a number of more digits than people type.
func long(text string) bool {
	run := 0
	for _, c := range text {
		switch {
		case c >= '0' && c <= '9':
			if run++; run > inputDigits {
				return true
			}
		case c != '.':
			run = 0
		}
	}
	return false
}

// defaults writes long defaults for people in the list of flags.
func defaults(flags *flag.FlagSet) {
	flags.VisitAll(func(f *flag.Flag) {
		if f.Value.String() == f.DefValue {
			f.DefValue = understood(f.Value)
		}
	})
}

func inputs(flags *flag.FlagSet, u *Units, typed map[string]string) []input {
	var in []input
	flags.VisitAll(func(f *flag.Flag) {
		switch f.Name {
		case "json", "md", "explain", "picture", unitsFlag:
		default:
			in = append(in, input{f.Name, f.Value.String(), u.people(f, typed[f.Name])})
		}
	})
	return in
}
