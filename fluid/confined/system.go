package confined

import (
	"time"

	"completion.example/hydrostatics/unit"
)

// Part is a piece of a system under test: a volume of fluid and its walls.
type Part struct {
	Name   string               `json:"name"`
	Volume unit.Volume          `json:"volume"`
	Fluid  unit.Compressibility `json:"fluid"`
	Walls  unit.Compressibility `json:"walls"` // Space.Compliance; zero is rigid
}

// System is the pieces that stand under one test pressure.
type System []Part

// Volume returns the sum of the volumes.
func (s System) Volume() unit.Volume {
	var v unit.Volume
	for _, p := range s {
		v += p.Volume
	}
	return v
}

// Compressibility returns that of the whole, walls included, Σ Vi(ci + Ci)/ΣVi.
//
// Range: volumes above zero, not checked; NaN where there is none.
//
// Source: volumes that share a pressure add up.
func (s System) Compressibility() unit.Compressibility {
	var sum float64
	for _, p := range s {
		sum += float64(p.Volume) * float64(p.Fluid+p.Walls)
	}
	return unit.Compressibility(sum / float64(s.Volume()))
}

// VolumeFor returns the volume that raises the pressure by dp, c V dp, counted
// at test pressure; 1 % of compression makes 1 % of that.
func (s System) VolumeFor(dp unit.Pressure) unit.Volume {
	return TestVolume(s.Compressibility(), s.Volume(), dp)
}

// RiseFor returns the rise of pressure by a volume pumped, dV/(c V).
//
// Range: any volume, a negative one is bled off; NaN for a system without
// volume.
//
// Source: definition of the compressibility.
func (s System) RiseFor(pumped unit.Volume) unit.Pressure {
	return unit.Pressure(float64(pumped) / (float64(s.Compressibility()) * float64(s.Volume())))
}

// LeakRate returns the leak behind a fall of pressure over a time, c V Δp/Δt,
// where the temperature is steady.
//
//	Q = c·V·Δp/Δt
//
// Range: any fall, over a time that isn't zero: that gives an infinite rate, or
// NaN where nothing fell.
//
// Source: definition of the compressibility.
func (s System) LeakRate(fall unit.Pressure, over time.Duration) unit.FlowRate {
	return unit.FlowRate(float64(s.VolumeFor(fall)) / over.Seconds())
}

// TestVolume returns the volume that pressures a volume V up by dp, c V dp,
// with the compressibility of the fluid, or of fluid and walls together.
//
//	dV = c·V·dp
//
// Range: any numbers; nothing is checked.
//
// Source: definition of the compressibility.
func TestVolume(c unit.Compressibility, volume unit.Volume, dp unit.Pressure) unit.Volume {
	return unit.Volume(float64(c) * float64(volume) * float64(dp))
}
