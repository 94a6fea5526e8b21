package hydrostatics

import "errors"

// Errors to branch on with errors.Is.
var (
	// ErrOutsidePath: a depth that the well path doesn't reach.
	ErrOutsidePath = errors.New("outside the well path")
	// ErrOutsideColumn: a depth or pressure that the column doesn't hold.
	ErrOutsideColumn = errors.New("outside the column")
	// ErrNoBalance: no level, length or pressure gives what was asked for.
	ErrNoBalance = errors.New("no balance possible")
)

// scope stands before every fault of this package.
const scope = "hydrostatics"
