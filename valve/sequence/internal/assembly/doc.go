// Package assembly lays out by depth what is in the hole, string by string, and
// finds the spaces between: what is inside the innermost string, and what is around
// each string down to the end of what surrounds it.
//
// Strings stand in each other: each inside those before it. The space around a
// string goes on below its lower end in the bore of what it stands in, so that the
// whole hole is tiled. What seals off divides it: packers and seals the space around
// their own string, plugs and valves across the bore of an outer string the space
// that goes on in that bore.
//
// All numbers are in metres and square metres, depths measured, positive down.
// Everything wrong is told at once, and what clashes is named with both its lines.
package assembly
