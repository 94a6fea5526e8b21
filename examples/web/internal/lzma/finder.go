package lzma

// found is a stretch that stood before: that long, that far back (from 0).
type found struct {
	length int
	dist   uint32
}

const (
	hashBits = 18
	depth    = 400 // nodes of the tree that are looked at
)

// finder finds, for one position after the other, the nearest stretch of every
// length that began with the same bytes: a binary tree for each hash of three
// bytes, sorted by what follows, the last position at its root.
type finder struct {
	data  []byte
	roots []int32
	sons  []int32 // smaller, greater
	two   [1 << 16]int32
}

func newFinder(data []byte) *finder {
	f := &finder{data: data, roots: make([]int32, 1<<hashBits), sons: make([]int32, 2*len(data))}
	for i := range f.roots {
		f.roots[i] = -1
	}
	for i := range f.two {
		f.two[i] = -1
	}
	return f
}

// at adds position i and returns what was found, shortest first.
func (f *finder) at(i int, all []found) []found {
	all = all[:0]
	limit := min(len(f.data)-i, maxMatch)
	if limit < 4 {
		f.sons[2*i], f.sons[2*i+1] = -1, -1
		return all
	}
	d := f.data[i:]
	best := 1
	pair := int(d[0])<<8 | int(d[1])
	if j := f.two[pair]; j >= 0 {
		best = 2
		all = append(all, found{2, uint32(i - int(j) - 1)})
	}
	f.two[pair] = int32(i)
	h := (uint32(d[0]) | uint32(d[1])<<8 | uint32(d[2])<<16) * 0x9e3779b1 >> (32 - hashBits)
	j := f.roots[h]
	f.roots[h] = int32(i)
	smaller, greater := 2*i, 2*i+1
	under, over := 0, 0 // how much is known to be the same on either side
	for n := 0; j >= 0; n++ {
		if n == depth {
			break
		}
		o := f.data[j:]
		length := min(under, over)
		for length < limit && o[length] == d[length] {
			length++
		}
		if length > best {
			best = length
			all = append(all, found{length, uint32(i - int(j) - 1)})
		}
		if length == limit {
			f.sons[smaller], f.sons[greater] = f.sons[2*j], f.sons[2*j+1]
			return all
		}
		if o[length] < d[length] {
			f.sons[smaller] = j
			smaller = 2*int(j) + 1
			j = f.sons[smaller]
			under = length
		} else {
			f.sons[greater] = j
			greater = 2 * int(j)
			j = f.sons[greater]
			over = length
		}
	}
	f.sons[smaller], f.sons[greater] = -1, -1
	return all
}
