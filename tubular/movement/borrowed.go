package movement

import "sync"

// loadings are what the ways in which a string stands are worked out in: nothing of them
// is kept, and a programme works out hundreds.
var loadings = sync.Pool{New: func() any { return new(Loading) }}

func borrowed() *Loading { return loadings.Get().(*Loading) }

// giveBack lets go of the conditions, which may hold on to much.
func (l *Loading) giveBack() {
	l.conditions = Conditions{}
	loadings.Put(l)
}
