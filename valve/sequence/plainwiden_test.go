package sequence_test

import (
	"math"
	"math/rand/v2"
	"slices"

	"completion.example/valve/sequence"
)

// relativeWidth is how wide bands of a kind are among one another.
var relativeWidth = map[bandKind]float64{
	thresholdBand: 1, rearmBand: 1, densityBand: 0.15, poreBand: 0.3, fractureBand: 0.3, trappedBand: 1, ratingBand: 0.3, gaugeBand: 0.5,
}

// widened is the plan with bands that fit each other: the same seed widens the
// same values, each by a share of its own.
func (m *plainMaker) widened(seed uint64, factor float64) *sequence.Plan {
	for {
		if p := m.stretched(seed, factor); sound(p) {
			return p
		}
		factor *= 0.8
	}
}

func (m *plainMaker) stretched(seed uint64, factor float64) *sequence.Plan {
	random := rand.New(rand.NewPCG(seed, 7))
	var nominal float64 // of the threshold that a re-arm level belongs to
	return eachBand(m.plan, func(kind bandKind, b plainBand) plainBand {
		if kind == heldBand {
			return b // it has its band
		}
		x := b.nominal
		share := 0.2 + 0.8*random.Float64()
		skew := 0.7 + 0.6*random.Float64()
		keep := random.Float64() < 0.35
		if keep || (x == 0 && kind != rearmBand && kind != gaugeBand) {
			if kind == thresholdBand {
				nominal = x
			}
			return b
		}
		size := math.Abs(x)
		if kind != densityBand {
			size = max(size, 300*float64(psi))
		}
		if kind == forceBand {
			half := math.Abs(x) * min(0.5, m.width*factor*share)
			return plainBand{x - half, x, x + half}
		}
		half := size * m.width * factor * relativeWidth[kind] * share
		low, high := half*skew, half*(2-skew)
		switch kind {
		case rearmBand:
			room := 0.4 * math.Abs(nominal-x)
			low, high = min(low, room), min(high, room)
		case thresholdBand:
			nominal = x
			low, high = min(low, 15*float64(psi)+0.5*size), min(high, 15*float64(psi)+0.5*size)
		case trappedBand:
			low = min(low, x)
		case poreBand, fractureBand, densityBand, ratingBand:
			low, high = min(low, 0.2*x), min(high, 0.2*x)
		}
		return plainBand{x - low, x, x + high}
	})
}

// sound tells whether a plan's bands fit each other: a re-arm level lies wholly
// short of its threshold, a fracture pressure wholly above its formation's.
func sound(p *sequence.Plan) bool {
	for _, d := range p.Devices {
		for _, a := range d.Actions {
			row := slices.Clone(a.Triggers)
			for _, c := range append(slices.Clone(a.All), a.Any...) {
				row = append(row, c.Triggers...)
			}
			for _, t := range row {
				if a.Areas == nil && t.Count > 1 && !(t.Rearm.Greatest < t.Threshold.Least || t.Rearm.Least > t.Threshold.Greatest) {
					return false
				}
			}
		}
	}
	for _, f := range p.Formations {
		if f.Fracture.Nominal > 0 && f.Fracture.Least <= f.Pressure.Greatest {
			return false
		}
	}
	return true
}

// touch moves the near end of a trigger's band to the peak of what its action
// feels at nominal values without moving, or beside it by 0.01 psi.
func (m *plainMaker) touch(p *sequence.Plan) *sequence.Plan {
	r := plainWalkOf(sharp(p, nominalOf), 4, nil)
	felt := func(action int) (least, most float64) {
		least, most = math.Inf(1), math.Inf(-1)
		for _, step := range r.stands {
			for _, at := range step {
				least, most = min(least, at.felt[action]), max(most, at.felt[action])
			}
		}
		return least, most
	}
	aside := []float64{0, 0, 0.01, -0.01}[m.random.IntN(4)] * float64(psi)
	well := newPlainWell(p)
	var candidates []int // by trigger in the order of eachBand; -1 where it isn't one
	for i, a := range well.actions {
		for k, t := range a.row {
			if a.pushed || a.axial {
				continue // spring and friction are bands of their own
			}
			can := k == 0 && len(a.row) == 1 && t.count == 1 && !a.disarmed && !t.falling
			if can {
				_, most := felt(i)
				can = most < t.level && most > t.level-2000
			}
			if can {
				candidates = append(candidates, i)
			} else {
				candidates = append(candidates, -1)
			}
		}
	}
	k := -1
	return eachBand(p, func(kind bandKind, b plainBand) plainBand {
		if kind != thresholdBand {
			return b
		}
		if k++; candidates[k] < 0 || m.chance(0.4) {
			return b
		}
		_, most := felt(candidates[k])
		if end := most*float64(psi) + aside; end <= b.nominal {
			b.least = end
		}
		return b
	})
}
