// Package everyslot feeds nonsense into every slot of every exported call: each
// quantity, number, count, pointer and interface among the arguments, however
// deep in a struct, is replaced by NaN, both infinities, both zeros, the least
// and greatest numbers there are, -1 and nil, one at a time, and the call is
// made. It must come back, without a panic; what returns an error must return it
// or finite numbers; and a closed formula that depends on a number must give NaN
// for NaN.
//
// The list of calls is made from the sources (go test ./internal/everyslot
// -update writes it anew), so that none is forgotten. The arguments to begin with
// are samples and what other calls return; a call for which none can be had is
// named in a list of its own.
package everyslot
