package movement

import (
	"testing"

	"completion.example/internal/calculator/golden"
	"github.com/stretchr/testify/require"
)

func TestMovement(t *testing.T) {
	golden.Check(t, Command)
	golden.File(t, Command, "anchored", 0, "-seals", "anchored", "-slack-off", "20000 lbf")
	golden.File(t, Command, "limited", 0, "-seals", "limited", "-travel-up", "5 ft", "-slack-off", "10000 lbf")
	golden.File(t, Command, "weak", 1, "-yield", "80000 psi")
	golden.File(t, Command, "joint", 1, "-seals", "anchored", "-joint", "50 klbf", "-wear", "0.05 in")
	golden.File(t, Command, "worn-through", 2, "-wear", "1 in", "-joint", "-5 lbf")
	golden.File(t, Command, "unrated", 0, "-yield", "0 psi")
	golden.File(t, Command, "factors", 1, "-burst-factor", "1.1", "-collapse-factor", "1.1", "-tension-factor", "1.3", "-triaxial-factor", "1.25")
	golden.File(t, Command, "soft", 2, "-yield", "10000 psi", "-burst-factor", "0.5")
	golden.File(t, Command, "faults", 2, "-od", "2 in", "-depth", "-5 ft", "-slack-off", "5000 lbf")
}

func TestPicture(t *testing.T) {
	svg := golden.Picture(t, Command)
	for _, word := range []string{"Axial force", "effective", "triaxial"} {
		require.Contains(t, svg, word)
	}
}
