// Package proof turns a walk in all choices of the inputs into a verdict.
//
// Proved: in no choice inside the bands is a limit passed; the bound of every
// margin holds for the whole box, whatever was found to be the worst choice.
// Refuted: a choice inside the bands was found in which a walk of plain numbers
// passes the limit: the witness. Not decided: neither.
package proof
