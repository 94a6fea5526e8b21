//go:build !js

package main

import _ "embed"

//go:embed keys.txt
var keyTable string
