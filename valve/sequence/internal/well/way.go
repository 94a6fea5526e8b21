package well

import (
	"math"
	"slices"

	"completion.example/valve/sequence/internal/affine"
)

// hop is the way through one compartment, from one of its depths to another, and the
// volume on the way before and after it.
type hop struct {
	compartment int
	from, to    int // in its Depths
	begin, end  float64
	marks       []station // along it: measured depth and volume on the way
}

type station struct{ md, volume float64 }

// plug is a fluid on the way, between two volumes.
type plug struct {
	fluid      int
	begin, end float64
}

// Way is the way of what is pumped, with the fluids that stand on it.
type Way struct {
	pump      Pump
	hops      []hop
	train     []plug
	total     float64
	layers    map[int][]Layer // by compartment: as they were
	gradients map[gradientKey]affine.Form
	stations  []float64 // volumes on the way at which something stands or turns
}

// route are the open ports from one compartment to another.
func (s *State) route(from, to int) ([]int, error) {
	by := map[int]int{from: -1}
	order := []int{from}
	ports := 0
	for k := 0; k < len(order); k++ {
		for _, p := range s.around[order[k]] {
			if !s.Open[p] {
				continue
			}
			ports++
			next := s.Ports[p].A + s.Ports[p].B - order[k]
			if _, seen := by[next]; !seen {
				by[next] = p
				order = append(order, next)
			}
		}
	}
	if _, ok := by[to]; !ok {
		return nil, unpumped("no way is open from %q to %q", s.Compartments[from].Name, s.Compartments[to].Name)
	}
	if ports/2 >= len(order) {
		return nil, unpumped("more than one way is open from %q to %q; how a rate parts between them isn't modelled", s.Compartments[from].Name, s.Compartments[to].Name)
	}
	for _, m := range order {
		if m == to || m == from {
			continue
		}
		if s.Surface[m] {
			return nil, unpumped("%q is open at surface beside %q; shut it in first", s.Compartments[m].Name, s.Compartments[to].Name)
		}
	}
	var way []int
	for at := to; by[at] >= 0; {
		p := by[at]
		way = append(way, p)
		at = s.Ports[p].A + s.Ports[p].B - at
	}
	slices.Reverse(way)
	return way, nil
}

// measure finds the volumes along a hop and the fluids on it.
func (s *State) measure(w *Way, h *hop) error {
	k := &s.Compartments[h.compartment]
	if len(k.Bores) == 0 {
		return unpumped("%q has no bores, so that neither its volume nor its friction is known", k.Name)
	}
	if !s.columns[h.compartment].uniform {
		return unpumped("a fluid in %q feels pressure; pumping wants fluids of constant density", k.Name)
	}
	h.begin = w.total
	a, b := k.Depths[h.from].MD, k.Depths[h.to].MD
	step := 1
	if h.to < h.from {
		step = -1
	}
	marks := []float64{a}
	for d := h.from; d != h.to; d += step {
		marks = append(marks, k.Depths[d+step].MD)
	}
	h.marks = []station{{a, w.total}}
	w.stations = append(w.stations, w.total)
	for n := 1; n < len(marks); n++ { // bores end at depths of the compartment
		area := float64(k.bore((marks[n-1] + marks[n]) / 2).Conduit.Area())
		w.total += area * math.Abs(marks[n]-marks[n-1])
		h.marks = append(h.marks, station{marks[n], w.total})
		w.stations = append(w.stations, w.total)
	}
	h.end = w.total
	layers := s.columns[h.compartment].layers
	w.layers[h.compartment] = layers
	top := k.Depths[0].MD
	var plugs []plug
	for _, l := range layers {
		lo, hi := math.Max(top, math.Min(a, b)), math.Min(l.Bottom.MD, math.Max(a, b))
		top = l.Bottom.MD
		if lo < hi {
			x, y := h.volume(lo), h.volume(hi)
			plugs = append(plugs, plug{l.Fluid, math.Min(x, y), math.Max(x, y)})
		}
	}
	if a > b {
		slices.Reverse(plugs)
	}
	for _, q := range plugs {
		if n := len(w.train); n > 0 && w.train[n-1].fluid == q.fluid {
			w.train[n-1].end = q.end
			continue
		}
		w.train = append(w.train, q)
	}
	return nil
}

// bore is the section of a compartment at a depth.
func (k *Compartment) bore(md float64) *Bore {
	for i := range k.Bores {
		if md <= k.Bores[i].Bottom {
			return &k.Bores[i]
		}
	}
	return &k.Bores[len(k.Bores)-1]
}

// volume on the way at a measured depth of a hop.
func (h *hop) volume(md float64) float64 {
	for n := 1; n < len(h.marks); n++ {
		a, b := h.marks[n-1], h.marks[n]
		if (a.md-md)*(b.md-md) <= 0 && a.md != b.md {
			return a.volume + (b.volume-a.volume)*(md-a.md)/(b.md-a.md)
		}
	}
	return h.end
}

// depth is the measured depth of a hop at a volume on the way.
func (h *hop) depth(volume float64) float64 {
	for n := 1; n < len(h.marks); n++ {
		a, b := h.marks[n-1], h.marks[n]
		if volume <= b.volume && a.volume != b.volume {
			return a.md + (b.md-a.md)*(volume-a.volume)/(b.volume-a.volume)
		}
	}
	return h.marks[len(h.marks)-1].md
}

// Along tells whether two ways go through the same compartments at the same depths.
func (w *Way) Along(o *Way) bool {
	return slices.EqualFunc(w.hops, o.hops, func(a, b hop) bool {
		return a.compartment == b.compartment && a.from == b.from && a.to == b.to
	})
}

// Total is the volume on the way.
func (w *Way) Total() float64 { return w.total }

// Cuts are the volumes pumped between which no front passes anything.
func (w *Way) Cuts() []float64 {
	cuts := []float64{0, w.pump.Volume}
	if w.pump.Fluid < 0 {
		return nil
	}
	fronts := []float64{0}
	for _, q := range w.train {
		if q.end < w.total {
			fronts = append(fronts, q.end)
		}
	}
	for _, f := range fronts {
		for _, x := range w.stations {
			if v := x - f; v > 0 && v < w.pump.Volume {
				cuts = append(cuts, v)
			}
		}
	}
	slices.Sort(cuts)
	return slices.CompactFunc(cuts, func(a, b float64) bool { return math.Abs(b-a) < 1e-9*w.total })
}

// after is the train once a volume has been pumped.
func (w *Way) after(volume float64) []plug {
	if volume <= 0 || w.pump.Fluid < 0 {
		return w.train
	}
	all := []plug{{w.pump.Fluid, 0, math.Min(volume, w.total)}}
	for _, q := range w.train {
		if q.begin += volume; q.begin >= w.total {
			break
		}
		q.end = math.Min(q.end+volume, w.total)
		if all[len(all)-1].fluid == q.fluid {
			all[len(all)-1].end = q.end
			continue
		}
		all = append(all, q)
	}
	return all
}

// Out is what has left the way once a volume has been pumped, by fluid, in the order
// in which it comes.
func (w *Way) Out(volume float64) (fluids []int, volumes []float64) {
	for _, q := range slices.Backward(w.train) {
		x := math.Min(q.end+volume, w.total+volume) - math.Max(q.begin+volume, w.total)
		if x > 0 {
			fluids, volumes = append(fluids, q.fluid), append(volumes, math.Min(x, q.end-q.begin))
		}
	}
	if over := volume - w.total; over > 0 {
		fluids, volumes = append(fluids, w.pump.Fluid), append(volumes, over)
	}
	return fluids, volumes
}

// layersOf are the layers of a hop's compartment with a train on the way: what lies
// beside the way stays.
func (s *State) layersOf(w *Way, h *hop, train []plug) []Layer {
	k := &s.Compartments[h.compartment]
	lo, hi := k.Depths[h.from], k.Depths[h.to]
	if lo.MD > hi.MD {
		lo, hi = hi, lo
	}
	var on []Layer
	for _, q := range train {
		a, b := math.Max(q.begin, h.begin), math.Min(q.end, h.end)
		if a >= b {
			continue
		}
		x, y := h.depth(a), h.depth(b)
		bottom := math.Max(x, y)
		on = append(on, Layer{q.fluid, Depth{bottom, s.tvd(h.compartment, bottom)}})
	}
	if k.Depths[h.from].MD > k.Depths[h.to].MD {
		// Upwards: the last plug stands on top, and each ends where the one before began.
		slices.Reverse(on)
	}
	var all []Layer
	add := func(l Layer) {
		if n := len(all); n > 0 && all[n-1].Fluid == l.Fluid {
			all[n-1].Bottom = l.Bottom
			return
		}
		all = append(all, l)
	}
	top := k.Depths[0].MD
	old := w.layers[h.compartment]
	for _, l := range old { // above the way
		if top < lo.MD {
			end := l.Bottom
			if end.MD > lo.MD {
				end = lo
			}
			add(Layer{l.Fluid, end})
		}
		top = l.Bottom.MD
	}
	for n, l := range on {
		if n == len(on)-1 {
			l.Bottom = hi
		}
		add(l)
	}
	for _, l := range old { // under it
		if l.Bottom.MD > hi.MD {
			add(l)
		}
	}
	return all
}
