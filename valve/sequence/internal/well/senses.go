package well

import "slices"

// Senses tells whether a compartment counts in what an action's triggers feel.
func (a *Action) Senses(compartment int) bool {
	return compartment == a.Inside || compartment == a.Outside ||
		slices.ContainsFunc(a.More, func(m Weighed) bool { return m.Compartment == compartment })
}
