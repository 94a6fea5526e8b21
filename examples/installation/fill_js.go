package main

import (
	"errors"
	"io"
)

// fill is of the command: templates would make the page in the browser larger, which
// shows a plan in its own way.
func (c *content) fill(io.Writer) error {
	return errors.New("a report is written by the command, not in a browser")
}
