package validation

// Figures counts printed figures from outside: one that stands behind two capabilities is one figure.
// Its rows have one id and one source.
func Figures(outcomes []Outcome) int {
	type figure struct{ id, printed, source string }
	rows := map[figure]map[string]int{} // by capability
	for _, o := range outcomes {
		if !o.Status.External() {
			continue
		}
		f := figure{o.ID, o.Printed, o.Source}
		if rows[f] == nil {
			rows[f] = map[string]int{}
		}
		rows[f][o.Capability]++
	}
	n := 0
	for _, of := range rows {
		most := 0
		for _, c := range of {
			most = max(most, c)
		}
		n += most
	}
	return n
}
