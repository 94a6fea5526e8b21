package calculator

// renamed holds the flags that have another name than they had, by calculator:
// one name stands for one thing in all of them.
var renamed = map[string]map[string]string{
	"balance":      {"fracture": "fracture-gradient", "gradient": "temperature-gradient", "margin": "overbalance", "pressure": "surface-pressure", "surface": "surface-temperature"},
	"brine":        {"bottom": "bottom-temperature", "pressure": "bottom-pressure", "surface": "surface-temperature", "table": "coefficients", "wanted": "wanted-density"},
	"choke":        {"heatratio": "heat-ratio", "pipeafter": "pipe-after", "bore": "size"},
	"circulation":  {"fracture": "fracture-pressure", "port": "port-diameter", "tubing-id": "id", "tubing-od": "od", "tvd": "depth", "yield": "yield-point"},
	"column":       {"gradient": "temperature-gradient", "surface": "surface-temperature", "wanted": "wanted-pressure"},
	"commingle":    {"at": "loss-rate", "lossbetween": "loss-between", "nocrossflow": "no-crossflow"},
	"controlline":  {"annulus": "outside-pressure", "pump": "panel", "uncertainty": "volume-uncertainty"},
	"displacement": {"new": "new-volume", "pv": "plastic-viscosity", "spacer": "spacer-volume", "spacer-pv": "spacer-plastic-viscosity", "spacer-yp": "spacer-yield-point", "tubing-id": "id", "tubing-od": "od", "tvd": "depth", "yp": "yield-point"},
	"envelope":     {"casing": "casing-id", "compression": "mandrel-compression", "tension": "mandrel-tension", "tubing": "packer-force"},
	"freepoint":    {"pull": "pull-difference"},
	"friction":     {"yield": "yield-point"},
	"gascolumn":    {"pressure": "surface-pressure", "top-temperature": "surface-temperature"},
	"isolation":    {"annulus": "annulus-fluid", "tubing": "tubing-fluid"},
	"pins":         {"count": "pins"},
	"ratings":      {"burst-factor": "rupture-factor", "inside": "inside-pressure"},
	"safetyvalve":  {"annulus": "annulus-fluid", "control": "control-fluid", "second": "second-fluid"},
	"sleeves":      {"table": "combinations"},
	"stress":       {"burst": "burst-factor", "collapse": "collapse-factor", "inside": "inside-pressure", "outside": "outside-pressure", "tension": "tension-factor", "triaxial": "triaxial-factor"},
	"stretch":      {"fluid": "density", "wanted": "wanted-stretch"},
	"survey":       {"file": "survey", "md": "measured-depth", "tvd": "depth"},
	"trapped":      {"compression": "compressibility", "expansion": "expansivity", "from": "temperature-before", "gas": "gas-volume", "pressure": "pressure-before", "to": "temperature-after", "tubing-id": "id", "tubing-od": "od"},
	"utube":        {"annulus": "annulus-fluids", "port": "depth", "tubing": "tubing-fluids"},
	"buckling":     {"friction": "friction-factor", "inside": "tubing-fluid", "outside": "annulus-fluid"},
	"hookload":     {"casing": "casing-id", "depth": "measured-depth", "fluid": "density", "shoe": "cased-to", "wanted": "wanted-pull"},
	"movement":     {"annulus": "annulus-fluid", "annulus-before": "annulus-fluid-before", "burst": "burst-factor", "casing": "casing-id", "collapse": "collapse-factor", "down": "travel-down", "friction": "flow-friction", "inside": "tubing-fluid", "inside-before": "tubing-fluid-before", "pi": "tubing-pressure", "pi-before": "tubing-pressure-before", "po": "annulus-pressure", "po-before": "annulus-pressure-before", "slackoff": "slack-off", "tension": "tension-factor", "triaxial": "triaxial-factor", "up": "travel-up"},
	"release":      {"annulus": "annulus-fluid", "casing": "casing-id", "inside": "tubing-pressure", "margin": "overbalance", "pins": "parting-load", "tubing": "tubing-fluid"},
	"seals":        {"casing": "casing-id", "cold-inside": "cold-tubing-pressure", "cold-outside": "cold-annulus-pressure", "cold-tubing": "cold-tubing-fluid", "down": "reading-down", "up": "reading-up", "warm-inside": "warm-tubing-pressure", "warm-tubing": "warm-tubing-fluid"},
	"setting":      {"annulus": "annulus-fluid", "held": "annulus-pressure", "surface": "tubing-pressure", "tubing": "tubing-fluid"},
}
