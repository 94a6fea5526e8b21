package sequence_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"completion.example/internal/long"
	"completion.example/valve/sequence"
	"github.com/stretchr/testify/require"
)

func mixed[T any](random *rand.Rand, list []T) []T {
	list = slices.Clone(list)
	random.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	return list
}

// shuffled puts every list of a plan whose order says nothing in another order.
// Layers, ramps, swaps, triggers and steps stay, and so does what a step expects
// of one device.
func shuffled(p *sequence.Plan, random *rand.Rand) *sequence.Plan {
	c := *p
	c.Fluids, c.Formations, c.Compartments = mixed(random, p.Fluids), mixed(random, p.Formations), mixed(random, p.Compartments)
	c.Ports, c.Devices, c.Ratings, c.Barriers = mixed(random, p.Ports), mixed(random, p.Devices), mixed(random, p.Ratings), mixed(random, p.Barriers)
	for i := range c.Ports {
		c.Ports[i].Joins = mixed(random, c.Ports[i].Joins)
	}
	for i := range c.Devices {
		actions := mixed(random, c.Devices[i].Actions)
		c.Devices[i].Actions = actions
		for k := range actions {
			a := &actions[k]
			a.Opens, a.Closes, a.Arms = mixed(random, a.Opens), mixed(random, a.Closes), mixed(random, a.Arms)
		}
	}
	c.Steps = slices.Clone(p.Steps)
	for i := range c.Steps {
		s := &c.Steps[i]
		s.Shut, s.Allow = mixed(random, s.Shut), mixed(random, s.Allow)
		s.Balance, s.Tests = mixed(random, s.Balance), mixed(random, s.Tests)
		s.Expect = mixedExpect(random, c.Devices, s.Expect)
	}
	return &c
}

func mixedExpect(random *rand.Rand, devices []sequence.Device, expect []string) []string {
	var out []string
	for _, d := range mixed(random, devices) {
		for _, name := range expect {
			if strings.HasPrefix(name, d.Name+": ") {
				out = append(out, name)
			}
		}
	}
	return out
}

// The plain walker itself must not care for the order of a list.
func TestPlainWalkerDoesNotSeeTheOrderOfLists(t *testing.T) {
	t.Parallel()
	for n := range uint64(long.Size(40, 150)) {
		p := plainPlan(6, n)
		q := shuffled(p, newRandom(6, n))
		require.NoError(t, q.Validate())
		a, b := plainOrders(p, 4, 200), plainOrders(q, 4, 200)
		require.Equal(t, a.ok(), b.ok(), "plan %d: %v, %v", n, a.failures, b.failures)
		if len(a.choices) == 0 {
			require.Len(t, b.failures, len(a.failures), "plan %d: %v, %v", n, a.failures, b.failures)
		}
	}
}
