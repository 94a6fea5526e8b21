package catalogue

import (
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/internal/fault"
	"completion.example/tubular"
)

// Pipe returns an API pipe from the text that people name it by: size, nominal
// weight and grade, each quantity with its unit, such as
//
//	2-7/8 in 6.5 lb/ft L80
//
// Errors: text that isn't one; what the catalogue or the grades haven't (wraps
// ErrNotFound).
func Pipe(text string) (tubular.Pipe, error) {
	c, err := Standard()
	if err != nil {
		return tubular.Pipe{}, err
	}
	return c.Pipe(text)
}

// Pipe returns a pipe of c from its text, as the function Pipe does.
func (c Catalogue) Pipe(text string) (tubular.Pipe, error) {
	words := strings.Fields(strings.ReplaceAll(text, ",", " "))
	for i := 1; i < len(words)-1; i++ {
		size, weight := strings.Join(words[:i], " "), strings.Join(words[i:len(words)-1], " ")
		od, err1 := unit.Read[unit.Length](size)
		w, err2 := unit.Read[unit.WeightPerLength](weight)
		if err1 != nil || err2 != nil {
			continue
		}
		e, err := c.Find(od, w)
		grade, errGrade := FindGrade(words[len(words)-1])
		if err := fault.Join("catalogue", err, errGrade); err != nil {
			return tubular.Pipe{}, err
		}
		return e.Pipe(grade), nil
	}
	return tubular.Pipe{}, fault.NewIn("catalogue", "", `pipe is %q; must be size, weight and grade, such as "2-7/8 in 6.5 lb/ft L80"`, text)
}
