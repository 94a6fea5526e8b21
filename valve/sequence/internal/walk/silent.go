package walk

// silentMissing holds what is expected of silent actions against the alternatives
// of their progress at the end of a step: those in which it hasn't happened are
// missing, and are left.
func (k *Walker) silentMissing(w *World, missing bool) (*World, bool) {
	for d, expected := range k.step.Expect {
		if len(expected) == 0 || !k.silentAction(expected[0]) {
			continue
		}
		i := expected[0]
		var done []Progress
		for _, p := range w.Rows[i] {
			if p.Done && w.State.Armed[i] && len(expected) == 1 {
				done = append(done, p)
				continue
			}
			part := w.within(w.In(p))
			if part != nil {
				k.Observer.Missing(part, i, k.place)
			}
		}
		if len(done) == 0 {
			missing = true
			if k.PastUnintended {
				w.Came[d] = 0
			}
			continue
		}
		w.Rows[i] = done
		w.Came[d] = 1
	}
	// What has happened doesn't happen again.
	for i := range w.Rows {
		if !w.State.Armed[i] || !k.silentAction(i) {
			continue
		}
		all := true
		for _, p := range w.Rows[i] {
			all = all && p.Done
		}
		if all && len(w.Rows[i]) > 0 {
			w.State.Armed[i] = false
			w.Times[i]++
			w.Rows[i] = []Progress{{}}
		}
	}
	return w, missing
}
