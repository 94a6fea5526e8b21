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
	Note         string        `json:"note"`
	Fluid        string        `json:"fluid"` // in everything but the lines at the start
	Casing       []Casing      `json:"casing"`
	Perforations []Perforation `json:"perforations"`
	Strings      []Tally       `json:"strings"` // in the order of running: each inside those before it
	Lines        []ControlLine `json:"lines"`
	Factor       float64       `json:"factor"`  // design factor of the ratings; 1 where left out
	Columns      bool          `json:"columns"` // the fluid over a shut valve is a barrier while it overbalances
	Without      []string      `json:"without"` // what isn't to be derived, such as "barriers.packer"
}

// Casing is a length of casing or liner, or of open hole.
type Casing struct {
	Note   string      `json:"note"`
	Name   string      `json:"name"`
	Pipe   *Pipe       `json:"pipe"`
	Hole   unit.Length `json:"hole"` // open hole: its diameter
	Top    unit.Length `json:"top"`
	Bottom unit.Length `json:"bottom"`
	Behind string      `json:"behind"` // the fluid behind it, from surface; its ratings are held against that
	Factor float64     `json:"factor"`
}

// Perforation is where a formation is open to the hole.
type Perforation struct {
	Formation string      `json:"formation"`
	Top       unit.Length `json:"top"`
	Bottom    unit.Length `json:"bottom"`
}

// Tally is a string, from its top down.
type Tally struct {
	Note   string      `json:"note"`
	Name   string      `json:"name"`
	Inside string      `json:"inside"` // what is in the innermost string is called; its own name where left out
	Around string      `json:"around"` // what is around it is called
	Top    unit.Length `json:"top"`    // of the innermost the hanger
	Closed bool        `json:"closed"` // its lower end is
	Pieces []Piece     `json:"tally"`
}

// Piece is one line of a tally.
type Piece struct {
	Note   string                 `json:"note"`
	Kind   PieceKind              `json:"kind"`
	Name   string                 `json:"name"` // its kind where left out
	Pipe   *Pipe                  `json:"pipe"` // as above it where left out
	Joint  unit.Force             `json:"joint"`
	Length unit.Length            `json:"length"`
	Top    unit.Length            `json:"top"`
	Bottom unit.Length            `json:"bottom"`
	At     unit.Length            `json:"at"` // where it acts: its top where left out
	Error  unit.Band[unit.Length] `json:"depth error"`
	OD     unit.Length            `json:"od"`    // the greatest, where it isn't the pipe's
	Below  string                 `json:"below"` // what the space under it is called

	In       Wall        `json:"in"`   // where it closes: bore or wall
	Open     bool        `json:"open"` // at the start
	Bore     unit.Length `json:"bore"` // of seals, and of the bore that they stand in
	Up       unit.Length `json:"up"`   // stroke of seals
	Down     unit.Length `json:"down"`
	Seal     unit.Length `json:"seal"`            // release: the diameter at which its joint seals
	Porosity float64     `json:"gravel porosity"` // screen: of the gravel packed around it

	Line      string `json:"line"` // safety valve
	OpenLine  string `json:"open line"`
	CloseLine string `json:"close line"`

	Starts []Trigger `json:"starts to set"` // what it does, and when
	Sets   []Trigger `json:"sets"`
	Opens  []Trigger `json:"opens"`
	Closes []Trigger `json:"closes"`
	Shifts []Trigger `json:"shifts"` // opens and closes alike
	Shears []Trigger `json:"shears out"`
	Parts  []Trigger `json:"parts"`
	Free   bool      `json:"free"` // packer: seals off, but doesn't hold its string

	Envelope *packer.Polygon          `json:"envelope"`
	Rated    unit.Band[unit.Pressure] `json:"rated"` // differential that it bears either way, or
	Burst    unit.Band[unit.Pressure] `json:"burst"`
	Collapse unit.Band[unit.Pressure] `json:"collapse"`
	Factor   float64                  `json:"factor"`
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
	Names    []string                 `json:"names"`
	Size     unit.Length              `json:"size"`
	Wall     unit.Length              `json:"wall"`
	Fluid    string                   `json:"fluid"`
	Yield    unit.Pressure            `json:"yield"` // its ratings are those of a pipe of that strength, or
	Burst    unit.Band[unit.Pressure] `json:"burst"`
	Collapse unit.Band[unit.Pressure] `json:"collapse"`
	Factor   float64                  `json:"factor"`
}

// pieceKeys are the keys that a kind of piece may have besides kind, name, pipe,
// joint, length, top, bottom, od and note, by kind.
var pieceKeys = map[PieceKind]string{
	PipeLength:     "",
	OtherPiece:     "",
	PackerPiece:    "at, depth error, below, starts to set, sets, free, envelope, rated, burst, collapse, factor",
	SleevePiece:    "at, depth error, open, open line, close line, opens, closes, shifts, rated, burst, collapse, factor",
	IsolationValve: "at, depth error, below, in, open, open line, close line, opens, closes, shifts, rated, burst, collapse, factor",
	SealStack:      "at, below, bore, up, down, rated, burst, collapse, factor",
	SealBore:       "bore",
	PlugPiece:      "at, depth error, below, shears out, rated, burst, collapse, factor",
	ReleasePiece:   "at, depth error, seal, parts",
	SafetyValve:    "at, depth error, line, opens, closes, rated, burst, collapse, factor",
	ScreenPiece:    "at, gravel porosity",
}

// pieceKinds in the order in which they are told.
var pieceKinds = []PieceKind{PipeLength, PackerPiece, SleevePiece, IsolationValve, SealStack, SealBore, PlugPiece, ReleasePiece, SafetyValve, ScreenPiece, OtherPiece}
