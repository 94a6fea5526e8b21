package lzma

import "math"

// Prices are in sixteenths of a bit.
const priceShift = 4

// costs of a bit whose probability lies in a step of sixteen.
var costs = func() (c [1 << probBits >> priceShift]int32) {
	for i := range c {
		p := (float64(i) + 0.5) * (1 << priceShift) / (1 << probBits)
		c[i] = int32(math.Round(-16 * math.Log2(p)))
	}
	return c
}()

func cost(p prob, bit int) int32 {
	if bit == 0 {
		return costs[p>>priceShift]
	}
	return costs[(1<<probBits-p)>>priceShift]
}

func costOfTree(p []prob, n, v int) (sum int32) {
	k := 1
	for n--; n >= 0; n-- {
		b := v >> n & 1
		sum += cost(p[k], b)
		k = k<<1 | b
	}
	return sum
}

func costOfReversed(p []prob, n int, v uint32) (sum int32) {
	k := 1
	for range n {
		b := int(v & 1)
		sum += cost(p[k], b)
		k = k<<1 | b
		v >>= 1
	}
	return sum
}

// prices are those of lengths and distances, worked out for a stretch at a time.
type prices struct {
	match, rep [places][maxMatch + 1]int32
	slot       [lenStates][1 << slotBits]int32
	near       [lenStates][fullDist]int32
	align      [1 << alignBits]int32
}

func (t *prices) update(m *model) {
	for p := range places {
		for length := minMatch; length <= maxMatch; length++ {
			t.match[p][length], t.rep[p][length] = costOfLength(&m.match, p, length), costOfLength(&m.rep, p, length)
		}
	}
	for s := range lenStates {
		for slot := range t.slot[s] {
			t.slot[s][slot] = costOfTree(m.slot[s][:], slotBits, slot)
			if slot >= endPosModel {
				t.slot[s][slot] += int32(slot/2-1-alignBits) << priceShift
			}
		}
		for d := range uint32(fullDist) {
			slot := slotOf(d)
			t.near[s][d] = t.slot[s][slot]
			if slot >= 4 {
				n := slot/2 - 1
				base := uint32(2|slot&1) << n
				t.near[s][d] += costOfReversed(m.special[int(base)-slot:], n, d-base)
			}
		}
	}
	for i := range t.align {
		t.align[i] = costOfReversed(m.align[:], alignBits, uint32(i))
	}
}

func costOfLength(l *lengths, place, length int) int32 {
	switch length -= minMatch; {
	case length < 8:
		return cost(l.choice[0], 0) + costOfTree(l.low[place][:], 3, length)
	case length < 16:
		return cost(l.choice[0], 1) + cost(l.choice[1], 0) + costOfTree(l.mid[place][:], 3, length-8)
	}
	return cost(l.choice[0], 1) + cost(l.choice[1], 1) + costOfTree(l.high[:], 8, length-16)
}

func (t *prices) distance(dist uint32, length int) int32 {
	s := lenState(length)
	if dist < fullDist {
		return t.near[s][dist]
	}
	return t.slot[s][slotOf(dist)] + t.align[dist&(1<<alignBits-1)]
}

// literal8 are the probabilities of a byte after another.
func (m *model) literal8(before byte) []prob {
	return m.literal[0x300*(int(before)>>(8-litContext)):][:0x300]
}

// costOfLiteral is the price of a byte; matched is the byte at the last distance, or
// -1.
func costOfLiteral(p []prob, b byte, matched int) (sum int32) {
	k, offset := 1, 0x100
	for i := 7; i >= 0; i-- {
		bit := int(b) >> i & 1
		if matched < 0 {
			sum += cost(p[k], bit)
		} else {
			m := matched >> i & 1
			sum += cost(p[offset+m<<8+k], bit)
			if m != bit {
				matched = -1
			}
		}
		k = k<<1 | bit
	}
	return sum
}
