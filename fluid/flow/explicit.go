package flow

import "math"

// Churchill returns Darcy's friction factor over all regimes in one formula,
//
//	f = 8 [ (8/Re)^12 + (A+B)^(-3/2) ]^(1/12)
//	A = [ 2.457 ln( 1/((7/Re)^0.9 + 0.27 ε/D) ) ]^16,  B = (37530/Re)^16
//
// Any Re above zero to 1e20; laminar exact, turbulent within 2 % of Colebrook
// for Re from 1e4 to 1e8 and ε/D to 0.05 (3 % at 4e3). Between Re 2,100 and
// 4,000 it bridges without a claim to accuracy. NaN at rest (Re = 0, where no
// factor exists), below zero, and where ε/D isn't from 0 to 1.
//
// Source: Churchill, Chemical Engineering 84 (1977) 91.
func Churchill(reynolds, relativeRoughness float64) DarcyFactor {
	if !chartable(reynolds, relativeRoughness) {
		return DarcyFactor(math.NaN())
	}
	a := 2.457 * math.Log(1/(math.Pow(7/reynolds, 0.9)+0.27*relativeRoughness))
	a2 := a * a
	a4 := a2 * a2
	a8 := a4 * a4
	b := 37530 / reynolds
	b2 := b * b
	b4 := b2 * b2
	b8 := b4 * b4
	sum := a8*a8 + b8*b8
	// (8/Re)^12 stands outside the bracket, where it can't overflow.
	l := 8 / reynolds
	r3 := reynolds / 8 * (reynolds / 8) * (reynolds / 8)
	r12 := r3 * r3 * r3 * r3
	return DarcyFactor(8 * l * math.Pow(1+r12/(sum*math.Sqrt(sum)), 1.0/12))
}

// Haaland returns Darcy's friction factor of turbulent flow,
//
//	1/√f = -1.8 log10( (ε/D/3.7)^1.11 + 6.9/Re )
//
// Range: Re 4e3 to 1e8, ε/D 0 to 0.05; within 2 % of Colebrook. Below the range
// it is a number without meaning; NaN where Re isn't above 100 or ε/D isn't from
// 0 to 1.
//
// Source: Haaland, J. Fluids Engineering 105 (1983) 89.
func Haaland(reynolds, relativeRoughness float64) DarcyFactor {
	if !turbulent(reynolds, relativeRoughness) {
		return DarcyFactor(math.NaN())
	}
	x := -1.8 * math.Log10(math.Pow(relativeRoughness/3.7, 1.11)+6.9/reynolds)
	return DarcyFactor(1 / (x * x))
}

// SwameeJain returns Darcy's friction factor of turbulent flow,
//
//	f = 0.25 / [ log10( (ε/D)/3.7 + 5.74/Re^0.9 ) ]²
//
// Range: Re 5e3 to 1e8, ε/D 1e-6 to 0.05; within 3 % of Colebrook. Below the
// range it is a number without meaning; NaN where Re isn't above 100 or ε/D isn't
// from 0 to 1.
//
// Source: Swamee and Jain, J. Hydraulics Div. ASCE 102 (1976) 657.
func SwameeJain(reynolds, relativeRoughness float64) DarcyFactor {
	if !turbulent(reynolds, relativeRoughness) {
		return DarcyFactor(math.NaN())
	}
	x := math.Log10(relativeRoughness/3.7 + 5.74/math.Pow(reynolds, 0.9))
	return DarcyFactor(0.25 / (x * x))
}

// Chen returns Darcy's friction factor of turbulent flow,
//
//	1/√f = -2 log10{ (ε/D)/3.7065 - (5.0452/Re) log10[ (ε/D)^1.1098/2.8257 + 5.8506/Re^0.8981 ] }
//
// Range: Re 4e3 to 4e8, ε/D 5e-7 to 0.05; within 0.5 % of Colebrook. Below the
// range it is a number without meaning; NaN where Re isn't above 100 or ε/D isn't
// from 0 to 1.
//
// Source: Chen, Ind. Eng. Chem. Fundamentals 18 (1979) 296.
func Chen(reynolds, relativeRoughness float64) DarcyFactor {
	if !turbulent(reynolds, relativeRoughness) {
		return DarcyFactor(math.NaN())
	}
	a := math.Pow(relativeRoughness, 1.1098)/2.8257 + 5.8506/math.Pow(reynolds, 0.8981)
	x := -2 * math.Log10(relativeRoughness/3.7065-5.0452/reynolds*math.Log10(a))
	return DarcyFactor(1 / (x * x))
}

// Blasius returns Fanning's friction factor of turbulent power-law flow in
// smooth pipe or annulus by the power form of Dodge and Metzner's results,
//
//	f = a/Re^b,  a = (log10 n + 3.93)/50,  b = (1.75 - log10 n)/7
//
// with the generalised Reynolds number. For n = 1 it is 0.0786/Re^0.25. Range:
// n 0.2 to 1, Re 3e3 to 1e5. Within 6 % of Dodge and Metzner for n from 0.4. NaN
// where Re or n isn't above zero, and where n is so small that a would not be.
//
// Source: Schuh, Oil & Gas J. 62 (1964) no. 32; API RP 13D (3rd edition, 1995).
func Blasius(reynolds, index float64) FanningFactor {
	l := math.Log10(index)
	if !(reynolds > 0 && reynolds <= mostReynolds && index > 0 && index <= greatestIndex && l > -3.93) {
		return FanningFactor(math.NaN())
	}
	return FanningFactor((l + 3.93) / 50 / math.Pow(reynolds, (1.75-l)/7))
}

// mostReynolds is far beyond anything that flows.
const mostReynolds = 1e20

// chartable tells whether a friction factor has a meaning.
func chartable(reynolds, relativeRoughness float64) bool {
	return reynolds > 0 && reynolds <= mostReynolds && relativeRoughness >= 0 && relativeRoughness <= 1
}

// turbulent tells whether a law of turbulent flow gives more than nonsense.
func turbulent(reynolds, relativeRoughness float64) bool {
	return reynolds > 100 && chartable(reynolds, relativeRoughness)
}
