// Package lzma writes what the page carries as small as it can: a third less than
// compress/gzip does of a program, so that it comes quickly, and in a form that a
// page of a hundred lines unpacks in a part of a second.
//
// The form is LZMA as a .lzma file has it, with four bits of literal context and
// three of position, which pack a program best. Source: LZMA specification, draft of 2015, in the public domain.
package lzma

import "math/bits"

// Sizes of the format.
const (
	probBits    = 11 // of a probability
	moveBits    = 5  // by which one adapts
	states      = 12
	lenStates   = 4
	slotBits    = 6
	alignBits   = 4
	endPosModel = 14 // the first distance slot with bits that aren't modelled
	fullDist    = 1 << (endPosModel / 2)
	minMatch    = 2
	maxMatch    = minMatch + 8 + 8 + 256 - 1
	litContext  = 4
	placeBits   = 3
	places      = 1 << placeBits // positions are told apart by their remainder
	reps        = 4              // distances that are remembered
)

type prob = uint16

const even prob = 1 << (probBits - 1)

// lengths are the probabilities of lengths.
type lengths struct {
	choice [2]prob
	low    [places][8]prob
	mid    [places][8]prob
	high   [256]prob
}

// model are all probabilities, and what is remembered of what came before.
type model struct {
	isRep, isRep0, isRep1, isRep2 [states]prob
	isMatch, isLong               [states][places]prob
	slot                          [lenStates][1 << slotBits]prob
	special                       [1 + fullDist - endPosModel]prob
	align                         [1 << alignBits]prob
	match, rep                    lengths
	literal                       [0x300 << litContext]prob
}

func newModel() *model {
	m := &model{}
	fill := func(all []prob) {
		for i := range all {
			all[i] = even
		}
	}
	for _, all := range [][]prob{m.isRep[:], m.isRep0[:], m.isRep1[:], m.isRep2[:], m.special[:], m.align[:], m.literal[:], m.match.choice[:], m.match.high[:],
		m.rep.choice[:], m.rep.high[:], m.slot[0][:], m.slot[1][:], m.slot[2][:], m.slot[3][:]} {
		fill(all)
	}
	for s := range states {
		fill(m.isMatch[s][:])
		fill(m.isLong[s][:])
	}
	for p := range places {
		for _, l := range []*lengths{&m.match, &m.rep} {
			fill(l.low[p][:])
			fill(l.mid[p][:])
		}
	}
	return m
}

// The state after a literal, a match, a repeated match, a repeated byte.
func afterLiteral(s int) int {
	switch {
	case s < 4:
		return 0
	case s < 10:
		return s - 3
	}
	return s - 6
}

func after(s, early, late int) int {
	if s < 7 {
		return early
	}
	return late
}

func afterMatch(s int) int { return after(s, 7, 10) }
func afterRep(s int) int   { return after(s, 8, 11) }
func afterShort(s int) int { return after(s, 9, 11) }

// slotOf is the slot of a distance counted from 0.
func slotOf(dist uint32) int {
	if dist < 4 {
		return int(dist)
	}
	n := bits.Len32(dist) - 1
	return n<<1 | int(dist>>(n-1)&1)
}

func lenState(length int) int { return min(length-minMatch, lenStates-1) }

// ranger is the range coder.
type ranger struct {
	low     uint64
	span    uint32
	cache   byte
	pending int
	out     []byte
}

func (r *ranger) shift() {
	if r.low < 0xff000000 || r.low > 0xffffffff {
		carry := byte(r.low >> 32)
		for c := r.cache; r.pending > 0; r.pending-- {
			r.out = append(r.out, c+carry)
			c = 0xff
		}
		r.cache = byte(r.low >> 24)
	}
	r.pending++
	r.low = r.low & 0x00ffffff << 8
}

func (r *ranger) bit(p *prob, bit int) {
	bound := r.span >> probBits * uint32(*p)
	if bit == 0 {
		r.span = bound
		*p += (1<<probBits - *p) >> moveBits
	} else {
		r.low += uint64(bound)
		r.span -= bound
		*p -= *p >> moveBits
	}
	for r.span < 1<<24 {
		r.span <<= 8
		r.shift()
	}
}

// direct writes bits that have no model.
func (r *ranger) direct(v uint32, n int) {
	for n--; n >= 0; n-- {
		r.span >>= 1
		if v>>n&1 == 1 {
			r.low += uint64(r.span)
		}
		for r.span < 1<<24 {
			r.span <<= 8
			r.shift()
		}
	}
}

func (r *ranger) tree(p []prob, n int, v int) {
	k := 1
	for n--; n >= 0; n-- {
		b := v >> n & 1
		r.bit(&p[k], b)
		k = k<<1 | b
	}
}

// reversed writes a tree from its lowest bit; p begins at its node 1.
func (r *ranger) reversed(p []prob, n int, v uint32) {
	k := 1
	for range n {
		b := int(v & 1)
		r.bit(&p[k], b)
		k = k<<1 | b
		v >>= 1
	}
}

func (r *ranger) length(l *lengths, place, length int) {
	switch length -= minMatch; {
	case length < 8:
		r.bit(&l.choice[0], 0)
		r.tree(l.low[place][:], 3, length)
	case length < 16:
		r.bit(&l.choice[0], 1)
		r.bit(&l.choice[1], 0)
		r.tree(l.mid[place][:], 3, length-8)
	default:
		r.bit(&l.choice[0], 1)
		r.bit(&l.choice[1], 1)
		r.tree(l.high[:], 8, length-16)
	}
}
