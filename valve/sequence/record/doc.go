// Package record holds the record of a job against its installation programme: what
// gauges, tanks and the weight indicator showed, against what the programme says
// that they show.
//
// # A record
//
// A record is a table, read from CSV by Read: time, the step of the plan, the
// pressure at surface of any compartment that reaches it, volumes in and out of it
// (counters that run on), and the weight indicator. Every column names its unit; two
// rows of their own say by how much each instrument reads wrong for certain (offset)
// and how far else it may be trusted (within). Pressures are gauge.
//
// # How it is held against the programme
//
// The pressures of each step are segmented: knots where a straight line between its
// neighbours misses the readings by more than their noise (Ramer 1972, Douglas and
// Peucker 1973), then the broken line through these knots that fits all readings by
// least squares. Its turning points are what was really applied, and the programme's
// own walk (sequence.Follow) is taken along them: once with every device moving as it
// does with nominal values, and once for each way in which it may have been
// otherwise. A hypothesis is a list of such faults: an action that did not happen
// although the walk would have it so, a leak of a compartment. Along each walk the
// volume that goes in or comes back is known up to a factor (the walls give a little,
// gas stands somewhere), which is fitted by least squares within limits that are
// inputs; a leak adds a part that grows with pressure times time. What is left is
// averaged in blocks and counted in shares of what it may be: instrument tolerance and
// four standard errors of the noise. At a share up to 1 a hypothesis explains the
// record, above 2 it is ruled out, between the two it is neither. Where two pressures
// fix one body of fluid, what flows isn't known beforehand, but that something flows,
// and which way, is: of another surface, and of a formation whose inflow the plan
// states; another one's face may be plugged, and speaks only weakly.
//
// Where a port that opens or shuts can be seen in the volume, the pressure at which it
// did so is found by two-phase regression (Quandt 1958) over all rows of the leg, and
// the device's threshold follows from it. Where nothing else explains a record, each
// device is tried that doesn't move with its nominal threshold, in its band or before it,
// where a volume leaves its course and between the last two rows on the way of a leg.
//
// # What is known
//
// A state is called known only where every hypothesis with as few faults as the
// simplest that explains the record, or one more, agrees on it, unless it is ruled
// out. What no instrument at surface shows (a control-line sleeve that moves with
// nothing across it) stays unknown until a later step tells. A record that no
// hypothesis tried explains is said to contradict the programme, with the place where
// it does.
//
// # Limits
//
// The volumes of the programme take the walls as rigid, so the factor may be above
// one. Friction while pumping isn't known: of a step that swaps fluids only the
// volumes are held against the plan. A step that produces or changes the temperature
// is walked and not held against the record. Of a step that pumps through the well the
// volumes are held against the plan, and the greatest pressure of the pump where the plan
// says how its fluids flow. What is done by hand is taken to have been done as planned;
// what goes in or out meanwhile isn't judged. Of a plan with branches the steps that the
// record has rows of say which way was taken, and, where they don't, it is that of what
// is seen; in the plan from here stand those that are still to come. What isn't judged is said, by step. Two faults at once beyond those stated
// are not looked for, and a device that moved in a step is taken as moved for good.
//
// Sources: Ramer, Computer Graphics and Image Processing 1 (1972) 244; Douglas and
// Peucker, Cartographica 10 (1973) 112; Quandt, JASA 53 (1958) 873; for the noise,
// Gasser, Sroka and Jennen-Steinmetz, Biometrika 73 (1986) 625, by its median instead
// of its mean. All four are cited from memory.
package record
