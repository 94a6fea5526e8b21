// Package unit holds the physical quantities of well completion work and
// their units.
//
// It works as time.Duration does. A quantity is a float64 in SI, constants are
// there to multiply by, and In divides:
//
//	p := 5000 * unit.PSI
//	p.In(unit.Bar)  // 344.7...
//	fmt.Println(p)  // 5000 psi
//
// A quantity is its own text, both ways, for JSON, CSV and flags
// (flag.TextVar): a number, a space that may be left out before a letter, and
// a unit, such as "5000 psi", "9.2 lb/gal" or "1e-6 1/psi". Lengths are also
// read as the trade writes pipe sizes: "9-5/8 in". A bare number, an unknown
// unit, the unit of another quantity, NaN and infinities are errors of type
// *ParseError. Units are a closed, case-sensitive table.
//
// What the trade writes is read as well, from closed tables of its own, and never
// written: "1.35 SG", "9.2 ppg", "2 bpm", "12 MMscf/d", "90 °C", "3 °/30 m",
// "5 1/2 in", "4.5\"", "3,000 psi". A density is read from its gradient, "0.45
// psi/ft". "psig", "barg" and "kPag" are what a pressure is anyway; of "psia",
// "bara" and "kPaa" the standard atmosphere of 101.325 kPa is taken off, so that
// 14.696 psia is nought. They are for pressures, not for differences of pressure
// or stresses, and a tolerance refuses them; ParseAbsolute is for the few inputs
// that are absolute. What stands for two things is refused with both readings: a
// ton, MSm3 (thousand or million), one comma before three digits where it may be
// a decimal one ("12,345 m").
//
// Text round-trips without loss: String and MarshalText take the shortest
// decimal in one of the trade's units that parses back to the same bits. A value
// for which that has as many digits as a float64, and which another unit says in
// few, is written in that one: what was read as 35 bar stays so. Numbers of more
// than 17 digits are multiplied by their unit before they are rounded, which
// reaches values that no float64 in the unit does. For people there is Rounded.
//
// Pressures are gauge unless a doc says otherwise. Pressure and stress are one
// type. Temperature is a type of its own, because a difference of two
// temperatures isn't a temperature.
//
// All factors follow from exact definitions: the international foot, inch and
// pound, the US gallon of 231 in³, the barrel of 42 gal, and g = 9.80665 m/s².
// One lb/gal is therefore 4/77 = 0.0519480… psi/ft. The field's 0.052 is
// 0.100 % more: 5 psi in 5,000 of mud pressure.
//
// Sources: NIST Special Publication 811 (2008), Appendix B; every factor is
// held against GNU units by the tests.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package unit
