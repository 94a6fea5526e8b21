package catalogue_test

import (
	"fmt"
	"strings"

	"completion.example/hydrostatics/unit"
	"completion.example/tubular/catalogue"
)

// The weights that there are of a size, lightest first.
func ExampleCatalogue_OfSize() {
	c, err := catalogue.Standard()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(c.Sizes()), "sizes of", len(c.Entries()), "pipes, from", c.Sizes()[0])
	for _, e := range c.OfSize(3.5 * unit.Inch) {
		fmt.Println(e.Kind, e.Weight, "bore", e.ID)
	}
	// Output:
	// 24 sizes of 165 pipes, from 1.05 in
	// tubing 7.7 lb/ft bore 3.068 in
	// tubing 9.2 lb/ft bore 2.992 in
	// tubing 9.3 lb/ft bore 2.992 in
	// tubing 10.2 lb/ft bore 2.922 in
	// tubing 12.7 lb/ft bore 2.75 in
	// tubing 12.95 lb/ft bore 2.75 in
	// tubing 14.3 lb/ft bore 2.64 in
	// tubing 15.5 lb/ft bore 2.548 in
	// tubing 17 lb/ft bore 2.44 in
}

// A pipe of one's own beside the standard ones, read from a file.
func ExampleCatalogue_With() {
	own, err := catalogue.Read(strings.NewReader(
		"kind,od,weight,finish,wall,id,drift,coupling,short_thread,long_thread,status,source\n" +
			"tubing,3.5 in,16.7 lb/ft,external upset,0.51 in,2.48 in,2.355 in,,,,user,the mill's data sheet\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := catalogue.Standard()
	if err == nil {
		c, err = c.With(own...)
	}
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := c.Find(3.5*unit.Inch, 16.7*unit.PoundPerFoot)
	fmt.Println(e.ID, e.Source, err)
	// Output: 2.48 in the mill's data sheet <nil>
}
