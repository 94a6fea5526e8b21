package main

// runtime is put into a changed package; the package's name stands before it.
const runtime = `
import (
	"cmp"
	"os"
	"strconv"
)

var mutantActive = func() int { n, _ := strconv.Atoi(os.Getenv("MUTANT")); return n }()

func mutantOn(id int) bool { return id == mutantActive }

type mutantNumber interface {
	~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64 | ~uintptr | ~float32 | ~float64
}

func mutantPick[T any](first int, v T, others ...T) T {
	if i := mutantActive - first; i >= 0 && i < len(others) {
		return others[i]
	}
	return v
}

func mutantAdd[T mutantNumber](id int, a, b T) T {
	if id == mutantActive {
		return a - b
	}
	return a + b
}

func mutantSub[T mutantNumber](id int, a, b T) T {
	if id == mutantActive {
		return a + b
	}
	return a - b
}

func mutantMul[T mutantNumber](id int, a, b T) T {
	if id == mutantActive {
		return a / b
	}
	return a * b
}

func mutantQuo[T mutantNumber](id int, a, b T) T {
	if id == mutantActive {
		return a * b
	}
	return a / b
}

func mutantRem[T ~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64](id int, a, b T) T {
	if id == mutantActive {
		return a * b
	}
	return a % b
}

func mutantNeg[T mutantNumber](id int, a T) T {
	if id == mutantActive {
		return a
	}
	return -a
}

func mutantSign[T mutantNumber](id int, a T) T {
	if id == mutantActive {
		return -a
	}
	return a
}

func mutantInverse[T mutantNumber](id int, a T) T {
	if id == mutantActive {
		return 1 / a
	}
	return a
}

func mutantLess[T cmp.Ordered](id int, a, b T) bool {
	return a < b || id == mutantActive && a == b
}

func mutantMore[T cmp.Ordered](id int, a, b T) bool {
	return a > b || id == mutantActive && a == b
}

func mutantAtMost[T cmp.Ordered](id int, a, b T) bool {
	return a < b || id != mutantActive && a == b
}

func mutantAtLeast[T cmp.Ordered](id int, a, b T) bool {
	return a > b || id != mutantActive && a == b
}
`
