package sequence

import (
	"completion.example/hydrostatics/unit"
	"completion.example/packer"
)

// Assembly is what is in the hole, as a tally: casing, strings from the hanger
// down, control lines. Derive makes compartments, ports, devices, the string,
// ratings and barriers of it by plain rules, and notes the rule in each. What the
// plan writes by hand beside it wins key by key, except for what the tally measures.
type Assembly struct {
	Note         string        `json:"note,omitzero"`
	Fluid        string        `json:"fluid,omitzero"` // in everything but the lines at the start
	Casing       []Casing      `json:"casing,omitempty"`
	Perforations []Perforation `json:"perforations,omitempty"`
	Strings      []Tally       `json:"strings,omitempty"` // in the order of running: each inside those before it
	Lines        []ControlLine `json:"lines,omitempty"`
	Factor       float64       `json:"factor,omitzero"`  // design factor of the ratings; 1 where left out
	Columns      bool          `json:"columns,omitzero"` // the fluid over a shut valve is a barrier while it overbalances
	// Walls gives every space its bores and the walls of their pipes: what is trapped
	// between them then feels heat, and what is pumped friction.
	Walls   bool     `json:"walls,omitzero"`
	Without []string `json:"without,omitempty"` // what isn't to be derived, such as "barriers.packer"
}

// Casing is a length of casing or liner, or of open hole.
type Casing struct {
	Note   string      `json:"note,omitzero"`
	Name   string      `json:"name,omitzero"`
	Pipe   *Pipe       `json:"pipe,omitzero"`
	Hole   unit.Length `json:"hole,omitzero"` // open hole: its diameter
	Top    unit.Length `json:"top,omitzero"`
	Bottom unit.Length `json:"bottom,omitzero"`
	Behind string      `json:"behind,omitzero"` // the fluid behind it, from surface; its ratings are held against that
	Factor float64     `json:"factor,omitzero"`
}

// Perforation is where a formation is open to the hole.
type Perforation struct {
	Formation string      `json:"formation,omitzero"`
	Top       unit.Length `json:"top,omitzero"`
	Bottom    unit.Length `json:"bottom,omitzero"`
}

// Tally is a string, from its top down.
type Tally struct {
	Note   string      `json:"note,omitzero"`
	Name   string      `json:"name,omitzero"`
	Inside string      `json:"inside,omitzero"` // what is in the innermost string is called; its own name where left out
	Around string      `json:"around,omitzero"` // what is around it is called
	Top    unit.Length `json:"top,omitzero"`    // of the innermost the hanger
	Closed bool        `json:"closed,omitzero"` // its lower end is
	Pieces []Piece     `json:"tally,omitempty"`
}

// Piece is one line of a tally.
type Piece struct {
	Note   string                 `json:"note,omitzero"`
	Kind   PieceKind              `json:"kind,omitzero"`
	Name   string                 `json:"name,omitzero"` // its kind where left out
	Pipe   *Pipe                  `json:"pipe,omitzero"` // as above it where left out
	Joint  unit.Force             `json:"joint,omitzero"`
	Length unit.Length            `json:"length,omitzero"`
	Top    unit.Length            `json:"top,omitzero"`
	Bottom unit.Length            `json:"bottom,omitzero"`
	At     unit.Length            `json:"at,omitzero"` // where it acts: its top where left out
	Error  unit.Band[unit.Length] `json:"depth_error,omitzero" was:"depth error"`
	OD     unit.Length            `json:"od,omitzero"`    // the greatest, where it isn't the pipe's
	Below  string                 `json:"below,omitzero"` // what the space under it is called

	In       Wall        `json:"in,omitzero"`   // where it closes: bore or wall
	Open     bool        `json:"open,omitzero"` // at the start
	Bore     unit.Length `json:"bore,omitzero"` // of seals, and of the bore that they stand in
	Up       unit.Length `json:"up,omitzero"`   // stroke of seals
	Down     unit.Length `json:"down,omitzero"`
	Seal     unit.Length `json:"seal,omitzero"`                                  // release: the diameter at which its joint seals
	Porosity float64     `json:"gravel_porosity,omitzero" was:"gravel porosity"` // screen: of the gravel packed around it

	Line      string `json:"line,omitzero"` // safety valve
	OpenLine  string `json:"open_line,omitzero" was:"open line"`
	CloseLine string `json:"close_line,omitzero" was:"close line"`

	Starts []Trigger `json:"starts_to_set,omitempty" was:"starts to set"` // what it does, and when
	Sets   []Trigger `json:"sets,omitempty"`
	Opens  []Trigger `json:"opens,omitempty"`
	Closes []Trigger `json:"closes,omitempty"`
	Shifts []Trigger `json:"shifts,omitempty"` // opens and closes alike
	Shears []Trigger `json:"shears_out,omitempty" was:"shears out"`
	Parts  []Trigger `json:"parts,omitempty"`
	Free   bool      `json:"free,omitzero"` // packer: seals off, but doesn't hold its string

	Barrier bool `json:"barrier,omitzero"` // before every formation, by itself

	Envelope *packer.Polygon          `json:"envelope,omitzero"`
	Rated    unit.Band[unit.Pressure] `json:"rated,omitzero"` // differential that it bears either way, or
	Burst    unit.Band[unit.Pressure] `json:"burst,omitzero"`
	Collapse unit.Band[unit.Pressure] `json:"collapse,omitzero"`
	Factor   float64                  `json:"factor,omitzero"`
}

// PieceKind is what a piece of a tally is.
type PieceKind string

// The kinds of piece.
const (
	PipeLength     PieceKind = "pipe"
	PackerPiece    PieceKind = "packer"
	SleevePiece    PieceKind = "sleeve"
	IsolationValve PieceKind = "isolation valve"
	SealStack      PieceKind = "seals"
	SealBore       PieceKind = "seal bore"
	PlugPiece      PieceKind = "plug"
	ReleasePiece   PieceKind = "release"
	SafetyValve    PieceKind = "safety valve"
	ScreenPiece    PieceKind = "screen"
	OtherPiece     PieceKind = "other" // takes its length and does nothing
)

// Wall is where a piece closes.
type Wall string

// The places.
const (
	InBore Wall = "bore"
	InWall Wall = "wall"
)

// ControlLine are control lines of one make, clamped to the innermost string.
type ControlLine struct {
	Names    []string                 `json:"names,omitempty"`
	Size     unit.Length              `json:"size,omitzero"`
	Wall     unit.Length              `json:"wall,omitzero"`
	Fluid    string                   `json:"fluid,omitzero"`
	Yield    unit.Pressure            `json:"yield,omitzero"` // its ratings are those of controlline.Line, or
	Burst    unit.Band[unit.Pressure] `json:"burst,omitzero"`
	Collapse unit.Band[unit.Pressure] `json:"collapse,omitzero"`
	Factor   float64                  `json:"factor,omitzero"`
}

// pieceKeys are the keys that a kind of piece may have besides kind, name, pipe,
// joint, length, top, bottom, od and note, by kind.
var pieceKeys = map[PieceKind]string{
	PipeLength:     "",
	OtherPiece:     "",
	PackerPiece:    "at, depth_error, below, starts_to_set, sets, free, barrier, envelope, rated, burst, collapse, factor",
	SleevePiece:    "at, depth_error, barrier, open, open_line, close_line, opens, closes, shifts, rated, burst, collapse, factor",
	IsolationValve: "at, depth_error, barrier, below, in, open, open_line, close_line, opens, closes, shifts, rated, burst, collapse, factor",
	SealStack:      "at, below, bore, up, down, rated, burst, collapse, factor",
	SealBore:       "bore",
	PlugPiece:      "at, depth_error, barrier, below, shears_out, rated, burst, collapse, factor",
	ReleasePiece:   "at, depth_error, seal, parts",
	SafetyValve:    "at, depth_error, barrier, line, opens, closes, rated, burst, collapse, factor",
	ScreenPiece:    "at, gravel_porosity",
}

// pieceKinds in the order in which they are told.
var pieceKinds = []PieceKind{PipeLength, PackerPiece, SleevePiece, IsolationValve, SealStack, SealBore, PlugPiece, ReleasePiece, SafetyValve, ScreenPiece, OtherPiece}
