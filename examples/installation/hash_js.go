package main

// hashOf is for paper, and a page in a browser shows none: the cryptography of the
// standard library would take 33 MB of its memory.
func hashOf([]byte) string { return "" }
