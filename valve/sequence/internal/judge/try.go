package judge

// trial is what a judge held before a leg was tried: of what has changed since, how it
// was.
type trial struct {
	margins map[Key]*Margin // nil: there was none
	forces  map[ForceKey]*Extreme
	sensed  map[[2]int]SensedRange // by step and action
	broken  int
}

// Try says that what is shown from here on may have to be forgotten.
func (j *Judge) Try() { j.trying, j.before.broken = true, j.broken }

// Tried ends what Try began: what was shown since is kept, or forgotten.
func (j *Judge) Tried(keep bool) {
	b := &j.before
	if !keep {
		for key, m := range b.margins {
			if m == nil {
				delete(j.Margins, key)
			} else {
				*j.Margins[key] = *m
			}
		}
		for key, x := range b.forces {
			if x == nil {
				delete(j.Forces, key)
			} else {
				*j.Forces[key] = *x
			}
		}
		for at, x := range b.sensed {
			j.sensed[at[0]][at[1]] = x
		}
		j.broken = b.broken
	}
	clear(b.margins)
	clear(b.forces)
	clear(b.sensed)
	j.trying = false
}

// remember keeps how a margin, or what is kept of a force, was before it changes.
func (j *Judge) remember(key Key, m *Margin) { remember(j.trying, &j.before.margins, key, m) }

func (j *Judge) rememberForce(key ForceKey, x *Extreme) {
	remember(j.trying, &j.before.forces, key, x)
}

func remember[K comparable, V any](trying bool, all *map[K]*V, key K, x *V) {
	if !trying {
		return
	}
	if *all == nil {
		*all = map[K]*V{}
	}
	if _, known := (*all)[key]; known {
		return
	}
	if x != nil {
		was := *x
		x = &was
	}
	(*all)[key] = x
}

func (j *Judge) rememberSensed(step, action int, x SensedRange) {
	if !j.trying {
		return
	}
	if j.before.sensed == nil {
		j.before.sensed = map[[2]int]SensedRange{}
	}
	at := [2]int{step, action}
	if _, known := j.before.sensed[at]; !known {
		j.before.sensed[at] = x
	}
}
