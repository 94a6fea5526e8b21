#!/bin/sh
# Makes gnu-units.csv: the size in SI of every symbol of every quantity, from
# GNU Units (Debian package "units"). Run: sh testdata/gnu-units.sh
#
# Each line below is quantity|symbol|what GNU Units calls it|SI unit. The names
# on the right are GNU Units' own, so nothing of this module's factors goes in.
set -eu
cd "$(dirname "$0")"
{
	echo "# $(units --version | head -n 1); made by gnu-units.sh"
	echo "quantity,symbol,expression,si,factor"
	while IFS='|' read -r quantity symbol expression si; do
		[ -n "$quantity" ] || continue
		factor=$(units -t -o '%.17g' "$expression" "$si" </dev/null)
		printf '%s,%s,%s,%s,%s\n' "$quantity" "$symbol" "$expression" "$si" "$factor"
	done <<'LIST'
length|m|meter|m
length|ft|foot|m
length|in|inch|m
length|cm|centimeter|m
length|mm|millimeter|m
length|km|kilometer|m
area|m2|meter^2|m^2
area|in2|inch^2|m^2
area|ft2|foot^2|m^2
area|cm2|centimeter^2|m^2
area|mm2|millimeter^2|m^2
area|bbl/ft|barrel/foot|m^2
area|L/m|liter/meter|m^2
volume|m3|meter^3|m^3
volume|bbl|barrel|m^3
volume|gal|usgallon|m^3
volume|ft3|foot^3|m^3
volume|in3|inch^3|m^3
volume|L|liter|m^3
volume|mL|milliliter|m^3
angle|rad|radian|radian
angle|deg|degree|radian
curvature|rad/m|radian/meter|radian/m
curvature|deg/100ft|degree/(100 foot)|radian/m
curvature|deg/30m|degree/(30 meter)|radian/m
mass|kg|kilogram|kg
mass|lb|pound|kg
mass|t|tonne|kg
mass|g|gram|kg
mass rate|kg/s|kilogram/second|kg/s
mass rate|kg/h|kilogram/hour|kg/s
mass rate|lb/s|pound/second|kg/s
mass rate|lb/min|pound/minute|kg/s
mass rate|lb/h|pound/hour|kg/s
force|N|newton|N
force|lbf|lbf|N
force|klbf|1000 lbf|N
force|kN|kilonewton|N
force|daN|decanewton|N
force|kgf|kgf|N
weight per length|N/m|newton/meter|N/m
weight per length|lb/ft|lbf/foot|N/m
weight per length|lb/in|lbf/inch|N/m
weight per length|kg/m|kgf/meter|N/m
pressure|Pa|pascal|Pa
pressure|psi|psi|Pa
pressure|kPa|kilopascal|Pa
pressure|MPa|megapascal|Pa
pressure|bar|bar|Pa
pressure|atm|atmosphere|Pa
pressure|ksi|ksi|Pa
pressure|kgf/cm2|kgf/centimeter^2|Pa
pressure|lbf/100ft2|lbf/(100 foot^2)|Pa
density|kg/m3|kilogram/meter^3|kg/m^3
density|lb/gal|pound/usgallon|kg/m^3
density|g/cm3|gram/centimeter^3|kg/m^3
density|lb/ft3|pound/foot^3|kg/m^3
density|lb/bbl|pound/barrel|kg/m^3
pressure gradient|Pa/m|pascal/meter|Pa/m
pressure gradient|psi/ft|psi/foot|Pa/m
pressure gradient|kPa/m|kilopascal/meter|Pa/m
pressure gradient|bar/m|bar/meter|Pa/m
temperature difference|K|kelvin|K
temperature difference|degC|degC|K
temperature difference|degF|degF|K
temperature gradient|K/m|kelvin/meter|K/m
temperature gradient|degF/100ft|degF/(100 foot)|K/m
temperature gradient|degF/ft|degF/foot|K/m
temperature gradient|degC/100m|degC/(100 meter)|K/m
flow rate|m3/s|meter^3/second|m^3/s
flow rate|bbl/d|barrel/day|m^3/s
flow rate|bbl/min|barrel/minute|m^3/s
flow rate|gal/min|usgallon/minute|m^3/s
flow rate|L/min|liter/minute|m^3/s
flow rate|m3/min|meter^3/minute|m^3/s
flow rate|m3/h|meter^3/hour|m^3/s
flow rate|m3/d|meter^3/day|m^3/s
flow rate|ft3/min|foot^3/minute|m^3/s
flow rate|Mcf/d|1000 foot^3/day|m^3/s
flow rate|cm3/min|centimeter^3/minute|m^3/s
velocity|m/s|meter/second|m/s
velocity|ft/s|foot/second|m/s
velocity|ft/min|foot/minute|m/s
velocity|m/min|meter/minute|m/s
shear rate|1/s|1/second|1/s
shear rate|1/min|1/minute|1/s
viscosity|Pa.s|pascal second|Pa s
viscosity|cP|centipoise|Pa s
viscosity|mPa.s|millipascal second|Pa s
viscosity|uPa.s|micropascal second|Pa s
consistency index|Pa.s^n|pascal|Pa
consistency index|mPa.s^n|millipascal|Pa
consistency index|dyn.s^n/cm2|dyne/centimeter^2|Pa
consistency index|lbf.s^n/100ft2|lbf/(100 foot^2)|Pa
compressibility|1/Pa|1/pascal|1/Pa
compressibility|1/psi|1/psi|1/Pa
compressibility|1/kPa|1/kilopascal|1/Pa
compressibility|1/MPa|1/megapascal|1/Pa
compressibility|1/bar|1/bar|1/Pa
expansivity|1/K|1/kelvin|1/K
expansivity|1/degC|1/degC|1/K
expansivity|1/degF|1/degF|1/K
torque|N.m|newton meter|N m
torque|ft-lbf|foot lbf|N m
torque|kN.m|kilonewton meter|N m
power|W|watt|W
power|kW|kilowatt|W
power|hp|horsepower|W
second moment of area|m4|meter^4|m^4
second moment of area|in4|inch^4|m^4
second moment of area|cm4|centimeter^4|m^4
permeability|m2|meter^2|m^2
permeability|D|darcy|m^2
permeability|mD|millidarcy|m^2
flow coefficient|m2|meter^2|m^2
flow coefficient|Kv|(meter^3/hour) sqrt((kilogram/meter^3)/bar) sqrt(999.1026)|m^2
flow coefficient|Cv|(usgallon/minute) sqrt((kilogram/meter^3)/psi) sqrt(999.1026)|m^2
productivity index|m3/s/Pa|meter^3/second/pascal|m^3/s/Pa
productivity index|bbl/d/psi|barrel/day/psi|m^3/s/Pa
productivity index|m3/d/bar|meter^3/day/bar|m^3/s/Pa
specific heat|J/kg/K|joule/kilogram/kelvin|J/kg/K
specific heat|kJ/kg/K|kilojoule/kilogram/kelvin|J/kg/K
specific heat|Btu/lb/degF|btu_IT/pound/degF|J/kg/K
thermal conductivity|W/m/K|watt/meter/kelvin|W/m/K
thermal conductivity|Btu/h/ft/degF|btu_IT/hour/foot/degF|W/m/K
heat transfer coefficient|W/m2/K|watt/meter^2/kelvin|W/m^2/K
heat transfer coefficient|Btu/h/ft2/degF|btu_IT/hour/foot^2/degF|W/m^2/K
thermal diffusivity|m2/s|meter^2/second|m^2/s
thermal diffusivity|mm2/s|millimeter^2/second|m^2/s
thermal diffusivity|ft2/h|foot^2/hour|m^2/s
thermal diffusivity|ft2/d|foot^2/day|m^2/s
temperature|K|70 kelvin|K
temperature|degC|tempC(70)|K
temperature|degF|tempF(70)|K
temperature|degR|70 degrankine|K
LIST
} >gnu-units.csv.new
mv gnu-units.csv.new gnu-units.csv
