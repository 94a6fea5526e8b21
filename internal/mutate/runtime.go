package main

// runtime is put into a changed package; the package's name stands before it.
const runtime = `
import (
	"cmp"
	"os"
	"strconv"
	"syscall"
)

var mutantActive = func() int { n, _ := strconv.Atoi(os.Getenv("MUTANT")); return n }()

// mutantReached is a file in memory, a byte for each switch that could have made a difference.
var mutantReached = func() []byte {
	f, err := os.OpenFile(os.Getenv("MUTANT_REACHED"), os.O_RDWR, 0)
	if err != nil {
		return nil
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		panic(err)
	}
	b, err := syscall.Mmap(int(f.Fd()), 0, int(info.Size()), syscall.PROT_READ|syscall.PROT_WRITE, syscall.MAP_SHARED)
	if err != nil {
		panic(err)
	}
	return b
}()

func mutantMark(id int) { mutantReached[id] = 1 }

func mutantOn(id int) bool {
	if mutantReached != nil {
		mutantMark(id)
	}
	return id == mutantActive
}

// mutantEqual tells whether a limit matters: the two sides are equal.
func mutantEqual[T cmp.Ordered](id int, a, b T) bool {
	if a != b {
		return false
	}
	if mutantReached != nil {
		mutantMark(id)
	}
	return true
}

type mutantNumber interface {
	~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64 | ~uintptr | ~float32 | ~float64
}

func mutantPick[T any](first int, v T, others ...T) T {
	if mutantReached != nil {
		for i := range others {
			mutantMark(first + i)
		}
	}
	if i := mutantActive - first; i >= 0 && i < len(others) {
		return others[i]
	}
	return v
}

func mutantAdd[T mutantNumber](id int, a, b T) T {
	if b != 0 && mutantOn(id) {
		return a - b
	}
	return a + b
}

func mutantSub[T mutantNumber](id int, a, b T) T {
	if b != 0 && mutantOn(id) {
		return a + b
	}
	return a - b
}

func mutantMul[T mutantNumber](id int, a, b T) T {
	if mutantOn(id) {
		return a / b
	}
	return a * b
}

func mutantQuo[T mutantNumber](id int, a, b T) T {
	if mutantOn(id) {
		return a * b
	}
	return a / b
}

func mutantRem[T ~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64](id int, a, b T) T {
	if mutantOn(id) {
		return a * b
	}
	return a % b
}

func mutantNeg[T mutantNumber](id int, a T) T {
	if mutantOn(id) {
		return a
	}
	return -a
}

func mutantSign[T mutantNumber](id int, a T) T {
	if mutantOn(id) {
		return -a
	}
	return a
}

func mutantInverse[T mutantNumber](id int, a T) T {
	if mutantOn(id) {
		return 1 / a
	}
	return a
}

func mutantLess[T cmp.Ordered](id int, a, b T) bool {
	return a < b || mutantEqual(id, a, b) && id == mutantActive
}

func mutantMore[T cmp.Ordered](id int, a, b T) bool {
	return a > b || mutantEqual(id, a, b) && id == mutantActive
}

func mutantAtMost[T cmp.Ordered](id int, a, b T) bool {
	return a < b || mutantEqual(id, a, b) && id != mutantActive
}

func mutantAtLeast[T cmp.Ordered](id int, a, b T) bool {
	return a > b || mutantEqual(id, a, b) && id != mutantActive
}
`
