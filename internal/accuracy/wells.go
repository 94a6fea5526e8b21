package accuracy

import (
	"math"

	"completion.example/hydrostatics"
	"completion.example/hydrostatics/unit"
	"completion.example/internal/precise"
)

// brineColumn integrates dp/dz = ρ0·g·exp(c·p − α·G·z) from a pressure at a depth.
const brineColumn = `a = α*(hot - 300)/8192
span = (exp(-a*from) - exp(-a*to))/a
-log(exp(-c*p) - c*ρ*9.80665*span)/c`

// arc is minimum curvature with the bend from its cosine.
const arc = `cosine = cos(I1)*cos(I2) + sin(I1)*sin(I2)*cos(A2 - A1)
tangent = sqrt((1 - cosine)/(1 + cosine))
half = (M2 - M1)/2*tangent/atan(tangent)
`

var wellFormulas = []Formula{
	{Name: "hydrostatics.Column.At, brine in a straight temperature", Range: "to 6,000 m, compressibility 1e-12 to 1e-9 1/Pa, expansivity 1e-6 to 1e-3 1/K", Limit: 12, equation: brineColumn,
		draw: func(d draw) sample {
			f, hot, z := d.brine(), d.hot(), d.between(10, 6000)
			got, err := at(f, hot, z)
			return sample{got: got, of: brineValues(f, hot, 0, 0, z), err: err}
		}},
	{Name: "hydrostatics.Column.Carry, brine in a straight temperature", Range: "as above, between any two depths; against ρ·g·z", Limit: 6, equation: brineColumn,
		draw: func(d draw) sample {
			f, hot, from, to := d.brine(), d.hot(), d.between(10, 6000), d.between(10, 6000)
			c, err := column(f, hot)
			if err != nil {
				return sample{err: err}
			}
			p, err := c.Carry(2e7, unit.Length(from), unit.Length(to))
			return sample{got: float64(p), of: brineValues(f, hot, 2e7, from, to), scale: 2e7 + float64(f.Reference)*9.8*math.Abs(to-from), err: err}
		}},
	{Name: "hydrostatics.Column.At, the same by collocation", Range: "as At; 1e-8 of the pressure, 4.5e7 units, is what a column promises", Limit: 4.5e7, loose: true, equation: brineColumn,
		draw: func(d draw) sample {
			f, hot, z := d.brine(), d.hot(), d.between(10, 6000)
			got, err := at(hidden{f}, hot, z)
			return sample{got: got, of: brineValues(f, hot, 0, 0, z), scale: float64(f.Reference) * 9.8 * 8192, err: err}
		}},
	{Name: "hydrostatics.CourseBetween, TVD", Range: "bends of 1e-6 to 1.5 rad; against the length", Limit: 6, equation: arc + "half*(cos(I1) + cos(I2))",
		draw: ofCourse(func(c hydrostatics.Course) unit.Length { return c.TVD })},
	{Name: "hydrostatics.CourseBetween, north", Range: "as above", Limit: 6, equation: arc + "half*(sin(I1)*cos(A1) + sin(I2)*cos(A2))",
		draw: ofCourse(func(c hydrostatics.Course) unit.Length { return c.North })},
}

func (d draw) brine() hydrostatics.SlightlyCompressible {
	return hydrostatics.SlightlyCompressible{Reference: unit.Density(d.between(800, 2300)), Temperature: unit.Kelvin(300),
		Compressibility: unit.Compressibility(d.over(1e-12, 1e-9)), Expansivity: unit.Expansivity(d.over(1e-6, 1e-3))}
}

// hot is the temperature at 8,192 m, K.
func (d draw) hot() float64 { return 300 + 8192*d.between(0.01, 0.06) }

func brineValues(f hydrostatics.SlightlyCompressible, hot, p, from, to float64) precise.Values {
	return precise.Values{"α": float64(f.Expansivity), "c": float64(f.Compressibility), "ρ": float64(f.Reference), "hot": hot, "p": p, "from": from, "to": to}
}

// hidden is a fluid whose closed form the column doesn't know.
type hidden struct{ hydrostatics.Fluid }

// column has 300 K and no pressure at the top, where the fluid is at its reference.
func column(f hydrostatics.Fluid, hot float64) (*hydrostatics.Column, error) {
	t, err := hydrostatics.NewTemperatureProfile([]hydrostatics.TemperaturePoint{
		{Temperature: unit.Kelvin(300)}, {TVD: 8192, Temperature: unit.Kelvin(hot)}})
	if err != nil {
		return nil, err
	}
	return hydrostatics.NewColumn([]hydrostatics.Layer{{Fluid: f, BottomTVD: 8192}}, t, hydrostatics.Reference{})
}

func at(f hydrostatics.Fluid, hot, z float64) (float64, error) {
	c, err := column(f, hot)
	if err != nil {
		return 0, err
	}
	p, err := c.At(unit.Length(z))
	return float64(p), err
}

func ofCourse(f func(hydrostatics.Course) unit.Length) func(d draw) sample {
	return func(d draw) sample {
		bend := d.over(1e-6, 0.75)
		a := hydrostatics.Station{MD: unit.Length(d.between(0, 5000)), Inclination: unit.Angle(d.between(0.8, 2)), Azimuth: unit.Angle(d.between(0, 6))}
		b := hydrostatics.Station{MD: a.MD + unit.Length(d.between(1, 500)), Inclination: a.Inclination + unit.Angle(bend*d.between(-1, 1)), Azimuth: a.Azimuth + unit.Angle(bend)}
		return sample{got: float64(f(hydrostatics.CourseBetween(a, b))), scale: float64(b.MD - a.MD), of: precise.Values{
			"M1": float64(a.MD), "I1": float64(a.Inclination), "A1": float64(a.Azimuth), "M2": float64(b.MD), "I2": float64(b.Inclination), "A2": float64(b.Azimuth)}}
	}
}
