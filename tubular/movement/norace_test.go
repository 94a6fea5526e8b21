//go:build !race

package movement_test

const raced = false
