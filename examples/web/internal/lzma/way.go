package lzma

// node is the cheapest way to a position found so far.
type node struct {
	price  int32
	from   int32 // length of the last step, with its tail
	tail   int32 // of it, if there is one: after a literal the same distance again, for as many bytes
	dist   int64 // of it, counted from 0; below 0: a literal; repeated distances are told by repeat
	repeat int8  // which remembered distance, or -1
	state  int
	past   [reps]uint32
}

// plain puts the last step of a way as it is written: a step with a tail is up to three.
func (n *node) plain(into []node) []node {
	if n.tail == 0 {
		return append(into, *n)
	}
	if first := n.from - 1 - n.tail; first > 0 {
		into = append(into, node{from: first, dist: n.dist, repeat: n.repeat})
	}
	return append(into, node{from: 1, dist: -1, repeat: -1}, node{from: n.tail, repeat: 0})
}

// arrive works out state and remembered distances where the cheapest way has come to k.
func (e *encoder) arrive(k int) {
	n := &e.nodes[k]
	before := &e.nodes[k-int(n.from)]
	n.state, n.past = before.state, before.past
	e.parts = n.plain(e.parts[:0])
	for m := range e.parts {
		n.state, n.past = moved(n.state, n.past, &e.parts[m])
	}
}

func moved(state int, past [reps]uint32, n *node) (int, [reps]uint32) {
	switch {
	case n.dist < 0 && n.repeat < 0:
		return afterLiteral(state), past
	case n.repeat < 0:
		return afterMatch(state), [reps]uint32{uint32(n.dist), past[0], past[1], past[2]}
	case n.from == 1:
		return afterShort(state), past
	}
	d := past[n.repeat]
	for r := n.repeat; r > 0; r-- {
		past[r] = past[r-1]
	}
	past[0] = d
	return afterRep(state), past
}

// relax looks at every step on from k.
func (e *encoder) relax(i, k, end int) {
	here := &e.nodes[k]
	at, room := i+k, min(end-k, maxMatch)
	place := at % places
	s := here.state
	set := func(length int, price int32, dist int64, repeat int8) {
		if to := &e.nodes[k+length]; price < to.price {
			to.price, to.from, to.tail, to.dist, to.repeat = price, int32(length), 0, dist, repeat
		}
	}
	// tailed is a step of some length, or of none, and what it has stood before goes on after
	// one byte that differs.
	tailed := func(length int, price int32, dist int64, repeat int8, state int, back uint32) {
		p := at + length
		q := p - int(back) - 1
		if q < 0 || length+1+minMatch > end-k || e.data[p+1] != e.data[q+1] {
			return
		}
		more := e.same(p+1, q+1, min(end-k-length-1, maxMatch))
		if more < minMatch {
			return
		}
		price += cost(e.isMatch[state][p%places], 0) + e.literalAt(p, state, q)
		state = afterLiteral(state)
		place := (p + 1) % places
		price += cost(e.isMatch[state][place], 1) + cost(e.isRep[state], 1) + e.which(state, place, 0) + e.table.rep[place][more]
		if to := &e.nodes[k+length+1+more]; price < to.price {
			to.price, to.from, to.tail, to.dist, to.repeat = price, int32(length+1+more), int32(more), dist, repeat
		}
	}
	b := e.data[at]
	last := at - int(here.past[0]) - 1
	set(1, here.price+cost(e.isMatch[s][place], 0)+e.literalAt(at, s, last), -1, -1)
	tailed(0, here.price, -1, -1, s, here.past[0])
	match := here.price + cost(e.isMatch[s][place], 1)
	repeated := match + cost(e.isRep[s], 1)
	if last >= 0 && e.data[last] == b {
		set(1, repeated+cost(e.isRep0[s], 0)+cost(e.isLong[s][place], 0), 0, 0)
	}
	for r, d := range here.past {
		length := e.same(at, at-int(d)-1, room)
		if length < minMatch {
			continue
		}
		price := repeated + e.which(s, place, r)
		tailed(length, price+e.table.rep[place][length], 0, int8(r), afterRep(s), d)
		for ; length >= minMatch; length-- {
			set(length, price+e.table.rep[place][length], 0, int8(r))
		}
	}
	match += cost(e.isRep[s], 0)
	length := minMatch
	for _, f := range e.all {
		for ; length <= min(f.length, room); length++ {
			set(length, match+e.table.match[place][length]+e.table.distance(f.dist, length), int64(f.dist), -1)
		}
		if f.length < room {
			tailed(f.length, match+e.table.match[place][f.length]+e.table.distance(f.dist, f.length), int64(f.dist), -1, afterMatch(s), f.dist)
		}
	}
}

// literalAt is the price of a byte as a literal, with the one that has stood at another
// place before what is the same.
func (e *encoder) literalAt(at, state, before int) int32 {
	matched := -1
	if state >= 7 {
		matched = int(e.data[before])
	}
	var last byte
	if at > 0 {
		last = e.data[at-1]
	}
	return costOfLiteral(e.literal8(last), e.data[at], matched)
}

// same counts the bytes that are the same from two positions on.
func (e *encoder) same(a, b, most int) int {
	if b < 0 {
		return 0
	}
	n := 0
	for n < most && e.data[a+n] == e.data[b+n] {
		n++
	}
	return n
}

// which is the price of saying which remembered distance is meant.
func (e *encoder) which(s, place, r int) int32 {
	switch r {
	case 0:
		return cost(e.isRep0[s], 0) + cost(e.isLong[s][place], 1)
	case 1:
		return cost(e.isRep0[s], 1) + cost(e.isRep1[s], 0)
	}
	return cost(e.isRep0[s], 1) + cost(e.isRep1[s], 1) + cost(e.isRep2[s], r-2)
}
