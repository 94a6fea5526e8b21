package main

import (
	"fmt"
	"strconv"
	"strings"

	"completion.example/valve/sequence"
)

// explained is the flag -explain: alone it is for everything, with a step for that
// one.
type explained struct {
	all  bool
	step string
}

func (e *explained) String() string {
	switch {
	case e == nil:
		return ""
	case e.step != "":
		return e.step
	case e.all:
		return "true"
	}
	return ""
}

// Set takes "true" for everything, or the number or the name of a step, with or
// without the word step before it.
func (e *explained) Set(text string) error {
	switch text {
	case "true":
		*e = explained{all: true}
	case "false":
		*e = explained{}
	default:
		*e = explained{step: strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(text), "step "))}
	}
	return nil
}

// IsBoolFlag says that the flag may stand alone.
func (e *explained) IsBoolFlag() bool { return true }

// stepsExplained joins "-explain" and "step 7" to one argument.
func stepsExplained(args []string) []string {
	var all []string
	for i := 0; i < len(args); i++ {
		if (args[i] == "-explain" || args[i] == "--explain") && i+1 < len(args) && strings.HasPrefix(args[i+1], "step ") {
			all = append(all, args[i]+"="+args[i+1])
			i++
			continue
		}
		all = append(all, args[i])
	}
	return all
}

// wants tells whether a step is shown.
func (e explained) wants(i int, s *sequence.StepResult) bool {
	return e.step == "" || e.step == strconv.Itoa(i+1) || e.step == s.Name
}

// known tells whether the plan has the step.
func (e explained) known(p *sequence.Plan) error {
	for i := range p.Steps {
		if e.wants(i, &sequence.StepResult{Name: p.Steps[i].Name}) {
			return nil
		}
	}
	return fmt.Errorf("-explain: no step %q; there are steps 1 to %d, by number or by name", e.step, len(p.Steps))
}

// explain writes the working of a step: that of its margins and, where the step was
// named, that of the string wherever the step stands still.
func explain(line func(head, format string, args ...any), u reader, s *sequence.StepResult, e explained) {
	if !e.all && e.step == "" {
		return
	}
	for _, x := range s.Steps() {
		line("working", "%s: %s", x.Name, u.text(fmt.Sprint(x)))
	}
	if e.step == "" {
		return
	}
	for _, p := range s.Points {
		for name, s := range bothStrings(p) {
			steps := s.Steps()
			if len(steps) == 0 {
				continue
			}
			line(name, "at %s:", p.Label)
			for _, x := range steps {
				line("", "%s: %s [%s]", x.Name, u.text(fmt.Sprint(x)), x.Source)
			}
		}
	}
}
