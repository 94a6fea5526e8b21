package sequence_test

import (
	"testing"

	"completion.example/hydrostatics/unit"
	"completion.example/packer"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a tally may not say, by its words.
func TestTalliesThatAreRefused(t *testing.T) {
	casing := func(p *sequence.Plan) *sequence.Casing { return &p.Assembly.Casing[0] }
	inner := func(p *sequence.Plan) *sequence.Tally { return &p.Assembly.Strings[len(p.Assembly.Strings)-1] }
	outer := func(p *sequence.Plan) *sequence.Tally { return &p.Assembly.Strings[0] }
	piece := func(p *sequence.Plan, kind sequence.PieceKind) *sequence.Piece {
		for i := range p.Assembly.Strings {
			for k := range p.Assembly.Strings[i].Pieces {
				if x := &p.Assembly.Strings[i].Pieces[k]; x.Kind == kind {
					return x
				}
			}
		}
		t.Fatalf("no %s", kind)
		return nil
	}
	set := []sequence.Trigger{{Threshold: unit.Exactly(2000 * psi)}}
	for _, x := range []struct {
		put  func(p *sequence.Plan)
		says string
	}{
		{func(p *sequence.Plan) { p.Assembly.Casing = nil }, "assembly.casing: is missing: what is around the strings"},
		{func(p *sequence.Plan) { p.Assembly.Strings = nil }, "assembly.strings: is missing: at least one string is wanted"},
		{func(p *sequence.Plan) { casing(p).Pipe = nil }, `assembly.casing[0]: wants a pipe, or the diameter of an open hole as "hole"`},
		{func(p *sequence.Plan) { casing(p).Hole = 9 * unit.Inch }, "assembly.casing[0]: has a pipe and an open hole; one of them will do"},
		{func(p *sequence.Plan) { casing(p).Pipe, casing(p).Hole = nil, -unit.Inch }, "assembly.casing[0].hole: is -1 in; must be above 0 in, at most"},
		{func(p *sequence.Plan) { c := casing(p); c.Pipe, c.Hole, c.Behind = nil, 12*unit.Inch, "packer brine" }, "assembly.casing[0].behind: belongs to a casing; there is no pipe"},
		{func(p *sequence.Plan) { outer(p).Inside = "x" }, "assembly.strings[0].inside: belongs to the innermost string, which is the last; what is inside"},
		{func(p *sequence.Plan) { piece(p, sequence.SealStack).Up = -foot }, ".up: is -1 ft; must not be negative, at most"},
		{func(p *sequence.Plan) {
			x := piece(p, sequence.PackerPiece)
			x.Rated, x.Burst = unit.Exactly(9000*psi), unit.Exactly(9000*psi)
		}, ".rated: stands beside burst or collapse; it is both at once"},
		{func(p *sequence.Plan) { x := piece(p, sequence.SleevePiece); x.Shifts, x.Opens = set, set }, ".shifts: stands beside opens or closes; it is both at once"},
		{func(p *sequence.Plan) {
			outer(p).Pieces = append(outer(p).Pieces, sequence.Piece{Kind: sequence.ReleasePiece, Parts: set, Seal: unit.Inch})
		}, `"release" belongs to the innermost string, whose pull is known`},
		{func(p *sequence.Plan) {
			x := piece(p, sequence.PackerPiece)
			x.Free, x.Envelope = true, &packer.Polygon{}
		}, ".envelope: belongs to a packer that holds the innermost string"},
		{func(p *sequence.Plan) {
			l := &p.Assembly.Lines[0]
			l.Yield, l.Burst = 30000*psi, unit.Exactly(10000*psi)
		}, "assembly.lines[0].yield: stands beside burst or collapse; its ratings follow from one of them"},
		{func(p *sequence.Plan) { l := &p.Assembly.Lines[0]; l.Names = append(l.Names, "spare") }, `assembly.lines[0].names: nothing in the strings is moved by "spare"`},
		{func(p *sequence.Plan) { casing(p).Bottom = casing(p).Top }, "it must be below its top at"},
		{func(p *sequence.Plan) {
			p.Assembly.Lines = nil
			inner(p).Pieces = []sequence.Piece{{Kind: sequence.PlugPiece, Pipe: inner(p).Pieces[0].Pipe}}
		}, "assembly.strings[1]: has no length"},
		{func(p *sequence.Plan) { inner(p).Pieces[0].Pipe = nil }, "has no pipe above it to take the diameters of; give it one"},
		{func(p *sequence.Plan) { p.Assembly.Without = []string{"string"} }, "assembly.without: the string can't be left out: release feels its load"},
		{func(p *sequence.Plan) {
			valve := sequence.Piece{Kind: sequence.SafetyValve, Line: "close line", Barrier: true, Opens: set}
			inner(p).Pieces = append(inner(p).Pieces[:1:1], append([]sequence.Piece{valve}, inner(p).Pieces[1:]...)...)
		}, ".barrier: wants the valve's opens and closes: it stands from when it closes until it opens"},
		{func(p *sequence.Plan) {
			x := *piece(p, sequence.SealStack)
			x.Name, x.Below = "again", "between"
			for i := range inner(p).Pieces {
				if inner(p).Pieces[i].Kind == sequence.SealStack {
					inner(p).Pieces = append(inner(p).Pieces[:i+1:i+1], append([]sequence.Piece{x}, inner(p).Pieces[i+1:]...)...)
					break
				}
			}
		}, "again divides the space around tubing at"},
		{func(p *sequence.Plan) { l := &p.Assembly.Lines[0]; l.Names = append(l.Names, l.Names[0]) }, `assembly.lines[0].names: "close line" is missing, or stands in assembly.lines[0] already`},
		{func(p *sequence.Plan) {
			outer(p).Pieces = append(outer(p).Pieces, sequence.Piece{Kind: sequence.ScreenPiece, Porosity: 1})
		}, ".gravel_porosity: is 1; must be from 0 to below 1"},
		{func(p *sequence.Plan) { outer(p).Pieces = nil }, "assembly.strings[0].tally: is empty"},
		{func(p *sequence.Plan) { piece(p, sequence.SealStack).At = 100 * foot }, ".at: is 100 ft; A-B seals reaches from "},
		{func(p *sequence.Plan) { piece(p, sequence.PackerPiece).OD = 12 * unit.Inch }, "outside doesn't go through assembly.casing[0]"},
		{func(p *sequence.Plan) { p.Rules.Triaxial = 11 }, "in the plan that follows from the assembly (Plan.Derive):\nrules.triaxial: is 11"},
	} {
		p := readPlan(t, shipped+"demo-as-tally.json")
		x.put(p)
		assert.ErrorContains(t, p.Validate(), x.says)
	}
	require.NoError(t, readPlan(t, shipped+"demo-as-tally.json").Validate())
}
