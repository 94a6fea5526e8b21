// Package notebooks holds teaching pages as Jupyter notebooks (nbformat 4, an
// open standard): text, Go code, and what the code prints.
//
//   - pressure.ipynb: from mud weight to the pressure at a device
//   - pins.ipynb: shear pins, bands and setting windows
//   - zones.ipynb: two zones flowing together through chokes
//
// The code of a page is that of the Example functions in the test file of the
// same name, so that it compiles and its output is checked whenever the tests
// run; another test holds every code cell and every output on the page against
// them. To change a lesson, change the Example, then run
//
//	go test ./examples/notebooks -update
//
// which writes code and output into the pages and leaves the text alone. A code
// cell names its Example in its metadata ("example"), or a declaration that
// several cells share ("declaration").
package notebooks
