// Package catalogue holds the API sizes of tubing (1.050 to 4-1/2 in) and casing
// (4-1/2 to 13-3/8 in), the API grades, and whatever pipe a user adds.
//
// Test pressures are gauge.
//
// Every row says where it comes from. Published rows were read in the source
// they name, as far as size, weight, wall, bore and drift go; the other rows,
// and all coupling diameters and thread lengths, were written down from memory
// of API Spec 5CT and API Std 5B. All rows pass the geometry checks of
// Entry.Validate. Before a pipe is relied on, hold its row against the mill's
// certificate.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package catalogue
