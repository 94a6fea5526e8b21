package judge

// trial is how what a judge has changed since a leg was tried was before.
type trial struct {
	margins changes[Key, Margin]
	forces  changes[ForceKey, Extreme]
	sensed  changes[[2]int, SensedRange] // by step and action
	broken  int
}

// changes are, by key, how things were before they changed; nil: there was none.
type changes[K comparable, V any] map[K]*V

// note keeps how a thing is that is about to change, where it hasn't changed before.
func (c *changes[K, V]) note(key K, x *V) {
	if _, known := (*c)[key]; known {
		return
	}
	if *c == nil {
		*c = changes[K, V]{}
	}
	if x != nil {
		was := *x
		x = &was
	}
	(*c)[key] = x
}

// undo makes things what they were.
func (c changes[K, V]) undo(all map[K]*V) {
	for key, was := range c {
		if was == nil {
			delete(all, key)
		} else {
			*all[key] = *was
		}
	}
}

// Try says that what is shown from here on may have to be forgotten.
func (j *Judge) Try() { j.trying, j.before.broken = true, j.broken }

// Tried ends what Try began: what was shown since is kept, or forgotten.
func (j *Judge) Tried(keep bool) {
	b := &j.before
	if !keep {
		b.margins.undo(j.Margins)
		b.forces.undo(j.Forces)
		for at, was := range b.sensed {
			j.sensed[at[0]][at[1]] = *was
		}
		j.broken = b.broken
	}
	clear(b.margins)
	clear(b.forces)
	clear(b.sensed)
	j.trying = false
}
