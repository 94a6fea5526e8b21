// Package display writes quantities for the reader: one unit for each quantity
// and purpose in a whole output, with digits that can be used.
//
// What a value is for decides its unit and digits as much as what it is: a depth
// is in feet to a tenth, the diameter of a pipe in inches to a thousandth, though
// both are lengths. So a depth never stands in kilometres beside one in feet, a
// volume never in cubic inches, a rating never in ksi beside psi.
//
//	s := display.SI()
//	s.Format(9186.4*unit.Foot, display.Depth)      // 2800 m
//	s.Format(5.5*unit.Inch, display.Diameter)      // 139.7 mm
//	s.Format(3000*unit.PSI, display.Usual)         // 206.8 bar
//
// There are three systems: Field, SI, which is the metric practice of the rig
// floor (bar, m, L, kN, degC), and Plan, the units that a set of texts is written
// in, such as a plan file or a command line.
//
// Format is for people. Exact writes the same unit without loss, for machines: it
// reads back to the same bits. A System is a small value; the zero value is Field.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package display
