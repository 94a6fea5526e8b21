package main

import (
	"cmp"
	"encoding/binary"
	"errors"
	"slices"
)

// errModule says that a file isn't a program that can be packed.
var errModule = errors.New("what the compiler has made isn't a module of WebAssembly as it is known here")

// Of a module: its head, and the numbers of its data section and of what a piece of
// data with a fixed place begins and ends its place with.
const (
	headLength  = 8
	dataSection = 11
	atFixed     = 0
	constant    = 0x41
	end         = 0x0b
)

// joined makes one piece of the pieces of data that lie near each other. The linker cuts
// data wherever a few noughts stand, into as many pieces as are allowed; their heads take
// more room in what is sent than the noughts do.
//
// Source: WebAssembly Core Specification, binary format: modules, sections, data segments.
func joined(module []byte) ([]byte, error) {
	if len(module) < headLength {
		return nil, errModule
	}
	out := slices.Clone(module[:headLength])
	for rest := module[headLength:]; len(rest) > 0; {
		kind := rest[0]
		body, left, err := counted(rest[1:])
		if err != nil {
			return nil, err
		}
		if kind == dataSection {
			if body, err = joinedData(body); err != nil {
				return nil, err
			}
		}
		out = append(binary.AppendUvarint(append(out, kind), uint64(len(body))), body...)
		rest = left
	}
	return out, nil
}

// near is how many noughts may stand between two pieces that become one.
const near = 4096

// piece is data at a place of the memory.
type piece struct {
	at   int64
	data []byte
}

func (p *piece) after() int64 { return p.at + int64(len(p.data)) }

func joinedData(section []byte) ([]byte, error) {
	count, n := binary.Uvarint(section)
	if n <= 0 {
		return nil, errModule
	}
	rest := section[n:]
	var all []piece
	for range count {
		if len(rest) < 2 || rest[0] != atFixed || rest[1] != constant {
			return nil, errModule
		}
		at, n := signed(rest[2:])
		if n <= 0 || len(rest) < 3+n || rest[2+n] != end {
			return nil, errModule
		}
		data, left, err := counted(rest[3+n:])
		if err != nil {
			return nil, err
		}
		rest = left
		all = append(all, piece{at, data})
	}
	slices.SortFunc(all, func(a, b piece) int { return cmp.Compare(a.at, b.at) })
	var whole []piece
	for _, p := range all {
		last := len(whole) - 1
		if last < 0 || p.at-whole[last].after() > near {
			whole = append(whole, piece{p.at, slices.Clone(p.data)})
			continue
		}
		gap := p.at - whole[last].after()
		if gap < 0 {
			return nil, errModule // what comes later would count
		}
		whole[last].data = append(append(whole[last].data, make([]byte, gap)...), p.data...)
	}
	out := binary.AppendUvarint(nil, uint64(len(whole)))
	for _, p := range whole {
		out = append(appendSigned(append(out, atFixed, constant), p.at), end)
		out = append(binary.AppendUvarint(out, uint64(len(p.data))), p.data...)
	}
	return out, nil
}

// counted takes bytes that their number stands before.
func counted(b []byte) (body, rest []byte, err error) {
	size, n := binary.Uvarint(b)
	if n <= 0 || size > uint64(len(b)-n) {
		return nil, nil, errModule
	}
	return b[n : n+int(size)], b[n+int(size):], nil
}

// signed reads a signed number, seven bits to a byte, lowest first, and says how many
// bytes it has.
func signed(b []byte) (x int64, n int) {
	for shift := 0; n < len(b) && shift < 63; shift += 7 {
		c := b[n]
		n++
		x |= int64(c&0x7f) << shift
		if c&0x80 == 0 {
			if c&0x40 != 0 {
				x |= -1 << (shift + 7)
			}
			return x, n
		}
	}
	return 0, 0
}

func appendSigned(b []byte, x int64) []byte {
	for {
		c := byte(x & 0x7f)
		x >>= 7
		if x == 0 && c&0x40 == 0 || x == -1 && c&0x40 != 0 {
			return append(b, c)
		}
		b = append(b, c|0x80)
	}
}
