package catalogue

import "completion.example/tubular"

// Connection returns what is known of the connection that an entry is sold with,
// in a grade: for non-upset API tubing the tensile strength of its threads, which
// is less than the body's; for external-upset tubing that of the body, by which it
// is rated. Of everything else nothing is known here: a casing's thread is not
// said, an integral joint and a plain end have the maker's own. Then Known of the
// answer is false, and nothing is to be called checked against it.
//
// Source: API Bul 5C3 (1985), 4.3; thread height from memory, see ThreadHeight.
func (e Entry) Connection(g Grade) tubular.Connection {
	p := e.Pipe(g)
	switch e.Finish {
	case NonUpset:
		return tubular.Connection{Name: "API non-upset", Tension: p.NonUpset(e.ThreadHeight()), Source: "API Bul 5C3 (1985), 4.3"}
	case ExternalUpset:
		return tubular.Connection{Name: "API external upset", Tension: p.BodyYield(), Source: "API Bul 5C3 (1985), 4.3: rated by the body"}
	case IntegralJoint, Threaded, PlainEnd:
	}
	return tubular.Connection{}
}
