package sequence

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
)

// holds tells whether a plan is proved by one walk in all choices that keeps nothing but
// what fails: no walk of the nominal values, no margins. Where it says no, what fails is
// still to be shown.
func (k *checker) holds() (bool, error) {
	if k.warms() { // how far a test falls is seen from the nominal values
		if err := k.walkNominal(); err != nil {
			return false, err
		}
		k.peaks()
	}
	run, err := k.Walk(k.ctx, affine.Box(len(k.Network.Symbols), k.Nominal()), proof.Options{Budget: k.options.Budget, Quiet: true})
	if err != nil {
		return false, err
	}
	k.programme.Inputs, k.programme.Branches = len(k.Network.Symbols), run.Worlds
	return run.Open == nil && len(run.Judge.Passed()) == 0, nil
}
