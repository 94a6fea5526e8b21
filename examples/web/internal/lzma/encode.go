package lzma

import (
	"encoding/binary"
	"math"
	"slices"
	"sync"
)

// plenty is the length of a match that is taken as it is.
const plenty = 160

// stretches are how many bytes' cheapest way may be looked for at once. Prices are those of
// what came before a stretch: which length suits some data is seen by trying.
var stretches = [...]int{3 << 10, 1 << 13}

type encoder struct {
	*ranger
	*model
	data  []byte
	find  *finder
	state int
	past  [reps]uint32
	table prices
	most  int // bytes of a stretch
	nodes []node
	all   []found
	way   []node
	parts []node // of the step that is looked at
}

// Encode returns data as a .lzma file of known size.
func Encode(data []byte) []byte {
	var tried [len(stretches)][]byte
	var group sync.WaitGroup
	for n, most := range stretches {
		group.Go(func() { tried[n] = encode(data, most) })
	}
	group.Wait()
	return slices.MinFunc(tried[:], func(a, b []byte) int { return len(a) - len(b) })
}

func encode(data []byte, most int) []byte {
	e := &encoder{ranger: &ranger{span: math.MaxUint32, pending: 1}, model: newModel(), data: data, find: newFinder(data), most: most, nodes: make([]node, most+1)}
	dictionary := uint32(1 << 16)
	for int(dictionary) < len(data) {
		dictionary <<= 1
	}
	e.out = append(e.out, placeBits*5*9+litContext) // (pb*5 + lp)*9 + lc
	e.out = binary.LittleEndian.AppendUint32(e.out, dictionary)
	e.out = binary.LittleEndian.AppendUint64(e.out, uint64(len(data)))
	for i := 0; i < len(data); {
		i = e.stretch(i)
	}
	for range 5 {
		e.shift()
	}
	return e.out
}

// stretch writes the bytes from position i by the cheapest way, and returns where
// it came to.
func (e *encoder) stretch(i int) int {
	end := min(e.most, len(e.data)-i)
	e.table.update(e.model)
	for k := 1; k <= end; k++ {
		e.nodes[k].price = math.MaxInt32
	}
	e.nodes[0] = node{state: e.state, past: e.past}
	for k := range end {
		if k > 0 {
			e.arrive(k)
		}
		e.all = e.find.at(i+k, e.all)
		if n := len(e.all); n > 0 && e.all[n-1].length >= plenty {
			e.emit(i, k)
			return e.long(i+k, e.all[n-1])
		}
		e.relax(i, k, end)
	}
	e.arrive(end)
	e.emit(i, end)
	return i + end
}

// long writes a match that is long enough to be taken as it is.
func (e *encoder) long(at int, f found) int {
	n := node{from: int32(f.length), dist: int64(f.dist), repeat: -1}
	for r, d := range e.past {
		if d == f.dist {
			n.repeat = int8(r)
			break
		}
	}
	e.step(at, &n)
	for k := 1; k < f.length; k++ {
		e.all = e.find.at(at+k, e.all)
	}
	return at + f.length
}

// emit writes the cheapest way to k.
func (e *encoder) emit(i, k int) {
	e.way = e.way[:0]
	for k > 0 {
		e.way = append(e.way, e.nodes[k])
		k -= int(e.nodes[k].from)
	}
	for n := len(e.way) - 1; n >= 0; n-- {
		e.parts = e.way[n].plain(e.parts[:0])
		for m := range e.parts {
			e.step(i, &e.parts[m])
			i += int(e.parts[m].from)
		}
	}
}

// step writes one literal or match.
func (e *encoder) step(at int, n *node) {
	s, place := e.state, at%places
	switch {
	case n.dist < 0 && n.repeat < 0:
		e.bit(&e.isMatch[s][place], 0)
		e.byte(at)
	case n.repeat >= 0:
		e.bit(&e.isMatch[s][place], 1)
		e.bit(&e.isRep[s], 1)
		e.repeat(n, place)
	default:
		e.bit(&e.isMatch[s][place], 1)
		e.bit(&e.isRep[s], 0)
		e.length(&e.match, place, int(n.from))
		e.distance(uint32(n.dist), lenState(int(n.from)))
	}
	e.state, e.past = moved(s, e.past, n)
}

func (e *encoder) byte(at int) {
	var before byte
	if at > 0 {
		before = e.data[at-1]
	}
	p, b := e.literal8(before), e.data[at]
	if e.state < 7 {
		e.tree(p, 8, int(b))
		return
	}
	matched, k, offset := int(e.data[at-int(e.past[0])-1]), 1, 0x100
	for i := 7; i >= 0; i-- {
		bit, m := int(b)>>i&1, matched>>i&1
		if offset == 0 {
			e.bit(&p[k], bit)
		} else {
			e.bit(&p[offset+m<<8+k], bit)
		}
		if m != bit {
			offset = 0
		}
		k = k<<1 | bit
	}
}

func (e *encoder) repeat(n *node, place int) {
	s := e.state
	switch n.repeat {
	case 0:
		e.bit(&e.isRep0[s], 0)
		if n.from == 1 {
			e.bit(&e.isLong[s][place], 0)
			return
		}
		e.bit(&e.isLong[s][place], 1)
	case 1:
		e.bit(&e.isRep0[s], 1)
		e.bit(&e.isRep1[s], 0)
	default:
		e.bit(&e.isRep0[s], 1)
		e.bit(&e.isRep1[s], 1)
		e.bit(&e.isRep2[s], int(n.repeat)-2)
	}
	e.length(&e.rep, place, int(n.from))
}

func (e *encoder) distance(dist uint32, s int) {
	slot := slotOf(dist)
	e.tree(e.slot[s][:], slotBits, slot)
	if slot < 4 {
		return
	}
	n := slot/2 - 1
	base := uint32(2|slot&1) << n
	if slot < endPosModel {
		e.reversed(e.special[int(base)-slot:], n, dist-base)
		return
	}
	e.direct((dist-base)>>alignBits, n-alignBits)
	e.reversed(e.align[:], alignBits, (dist-base)&(1<<alignBits-1))
}
