package accuracy

import "slices"

// Formulas are all whose digits are counted, floor by floor.
func Formulas() []Formula {
	return slices.Concat(wellFormulas, pipeFormulas, gasFormulas, flowFormulas, inflowFormulas)
}

// sum of numbers.
func sum(terms ...number) number {
	s := exact(0.0)
	for _, t := range terms {
		s = s.plus(t)
	}
	return s
}
