package main
import "io"
func writeNew(a io.Writer, b string) error { return nil }
