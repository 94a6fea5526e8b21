package sequence

import (
	"completion.example/valve/sequence/internal/affine"
	"completion.example/valve/sequence/internal/proof"
)

// holds tells whether a plan is proved by one walk in all choices that keeps nothing but
// what fails: no walk of the nominal values, no margins. Where it says no, what fails is
// still to be shown.
func (k *checker) holds() (bool, error) {
	k.progress.tell(0, "walking the plan")
	if _, err := k.nominalFirst(); err != nil {
		return false, err
	}
	run, err := k.Walk(k.ctx, affine.Box(len(k.Network.Symbols), k.Nominal()), proof.Options{Budget: k.options.Budget, Quiet: true})
	if err != nil {
		return false, err
	}
	k.programme.Inputs, k.programme.Branches = len(k.Network.Symbols), run.Worlds
	return run.Open == nil && len(run.Judge.Passed()) == 0, nil
}
