//go:build race

package movement_test

// raced: the race detector makes pools drop what they keep, at random.
const raced = true
