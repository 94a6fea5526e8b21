// Package tubular computes what a pipe is and what it can bear: geometry and
// weight, ratings by API TR 5C3, stresses in a thick wall, stretch and free
// point.
//
// # Signs and conventions
//
// Tension and lengthening are positive. A differential pressure is inside minus
// outside. Torque and curvature have no sign that matters here. Pressures are
// gauge; every axial force is the real (pipe wall) force unless a doc says
// effective.
//
// # Limits
//
// Ratings are of the pipe body and of API round and buttress threads, new and
// of specified minimum strength, with API's tolerances; proprietary connections
// have ratings of their own, which their makers publish. Stresses are linear
// elastic. Nothing here replaces the maker's rated data.
//
// Everything here is safe for concurrent use: nothing is kept between calls, what
// is prepared once doesn't change, and what a call is given to fill is the
// caller's.
package tubular
