#!/bin/sh
# Makes gnu-units.csv: the size in SI of every symbol of every quantity, from
# GNU Units (Debian package "units"). Run: sh testdata/gnu-units.sh
#
# Each line below is quantity|symbol|what GNU Units calls it|SI unit. The names
# on the right are GNU Units' own, so nothing of this module's factors goes in.
# Spellings that are read and never written stand at the end, several to a line
# with a semicolon between.
set -eu
cd "$(dirname "$0")"
{
	echo "# $(units --version | head -n 1); made by gnu-units.sh"
	echo "quantity,symbol,expression,si,factor"
	while IFS='|' read -r quantity symbols expression si; do
		[ -n "$quantity" ] || continue
		factor=$(units -t -o '%.17g' "$expression" "$si" </dev/null)
		printf '%s\n' "$symbols" | tr ';' '\n' | sed 's/"/""/g' | while read -r symbol; do
			case $symbol in *\"*) symbol="\"$symbol\"" ;; esac
			printf '%s,%s,%s,%s,%s\n' "$quantity" "$symbol" "$expression" "$si" "$factor"
		done
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
length|";in.;inch;inches|inch|m
length|';ft.;foot;feet|foot|m
length|metre;metres;meter;meters|meter|m
area|sq in;sq.in;sq.in.;sqin|inch^2|m^2
area|sq ft;sq.ft;sq.ft.;sqft|foot^2|m^2
area|l/m|liter/meter|m^2
area|gal/ft|usgallon/foot|m^2
area|ft3/ft|foot^3/foot|m^2
area|m3/m|meter^3/meter|m^2
volume|bbls;stb;STB;BBL|barrel|m^3
volume|gals;US gal;USgal|usgallon|m^3
volume|cu ft;cu.ft;cu.ft.;cuft;scf|foot^3|m^3
volume|cu in;cu.in;cu.in.;cuin|inch^3|m^3
volume|Sm3;sm3|meter^3|m^3
volume|l;dm3;litre;litres;liter;liters|liter|m^3
volume|ml;cm3;cc|cm^3|m^3
volume|Mscf;Mcf;MSCF;MCF|1000 foot^3|m^3
volume|MMscf;MMcf;MMSCF;MMCF|1e6 foot^3|m^3
angle|degree;degrees|degree|radian
curvature|deg/100 ft;deg/100'|degree/(100 foot)|radian/m
curvature|deg/30 m|degree/(30 meter)|radian/m
curvature|deg/10m;deg/10 m|degree/(10 meter)|radian/m
mass|lbs;lbm|pound|kg
mass|te;tonne;tonnes|tonne|kg
mass|klb;klbs;klbm|1000 pound|kg
mass rate|kg/hr|kg/hr|kg/s
mass rate|lb/hr;lbm/h;lbm/hr|lb/hr|kg/s
mass rate|lbm/min|lb/min|kg/s
mass rate|lbm/s|lb/s|kg/s
force|lb;lbs|lbf|N
force|klb;klbs;kip;kips|kip|N
force|t;te;tf;tonne;tonnes|tonne force|N
weight per length|ppf;lbf/ft;lbs/ft;lbm/ft;lb/foot|lbf/foot|N/m
weight per length|kgf/m|kgf/meter|N/m
weight per length|daN/m|decanewton/meter|N/m
weight per length|kN/m|kilonewton/meter|N/m
pressure|psig;psi(g);psi g;psia;psi(a);psi a|psi|Pa
pressure|barg;bar(g);bar g;bara;bar(a);bar a|bar|Pa
pressure|kPag;kPa(g);kPa g;kPaa;kPa(a);kPa a|kPa|Pa
pressure|MPag;MPa(g);MPa g;MPaa;MPa(a);MPa a|MPa|Pa
pressure|lbf/in2;lb/in2|lbf/inch^2|Pa
pressure|kpsi|1000 psi|Pa
pressure|kg/cm2|kgf/cm^2|Pa
pressure|lb/100ft2;lb/100 ft2;lbf/100 ft2;lbs/100ft2|lbf/(100 foot^2)|Pa
pressure|N/mm2|newton/mm^2|Pa
density|ppg;lbm/gal;lb/US gal;lb/USgal|pound/usgallon|kg/m^3
density|pcf;lbm/ft3;lb/cu ft|pound/foot^3|kg/m^3
density|lbm/bbl|pound/barrel|kg/m^3
density|SG;sg;g/cc;g/mL;g/ml|gram/cm^3|kg/m^3
density|kg/L;kg/l;kg/dm3|kg/liter|kg/m^3
density|t/m3|tonne/meter^3|kg/m^3
density|psi/ft|psi/foot/gravity|kg/m^3
density|kPa/m|kPa/meter/gravity|kg/m^3
density|bar/m|bar/meter/gravity|kg/m^3
density|bar/10m;bar/10 m|bar/(10 meter)/gravity|kg/m^3
pressure gradient|MPa/km|MPa/km|Pa/m
pressure gradient|bar/10m;bar/10 m|bar/(10 meter)|Pa/m
pressure gradient|psi/100ft;psi/100 ft|psi/(100 foot)|Pa/m
temperature difference|deg C|degC|K
temperature difference|deg F|degF|K
temperature gradient|degF/100 ft|degF/(100 foot)|K/m
temperature gradient|degC/100 m;K/100m|degC/(100 meter)|K/m
temperature gradient|degC/km;K/km|kelvin/km|K/m
temperature gradient|degC/m|degC/meter|K/m
flow rate|bpd;BPD;b/d;bbl/day;stb/d;STB/d;stb/day;STB/day;bopd;bwpd;blpd|barrel/day|m^3/s
flow rate|bpm;BPM|barrel/minute|m^3/s
flow rate|gpm;GPM;USgpm|usgallon/minute|m^3/s
flow rate|l/min;lpm;LPM;dm3/min|liter/minute|m^3/s
flow rate|m3/hr|meter^3/hr|m^3/s
flow rate|m3/day;Sm3/d;sm3/d;Sm3/day|meter^3/day|m^3/s
flow rate|cfm;scfm;scf/min|foot^3/minute|m^3/s
flow rate|mL/min;ml/min;cc/min|cm^3/minute|m^3/s
flow rate|Mscf/d;Mscf/day;Mcf/day;Mscfd;Mcfd;MSCF/D;MSCFD;MCFD|1000 foot^3/day|m^3/s
flow rate|MMscf/d;MMscf/day;MMcf/d;MMcf/day;MMscfd;MMcfd;MMSCF/D;MMSCFD;MMCFD|1e6 foot^3/day|m^3/s
flow rate|scf/d;scf/day;ft3/d;scfd|foot^3/day|m^3/s
flow rate|bbl/h;bbl/hr;bph;BPH|barrel/hour|m^3/s
flow rate|Mstb/d;Mbbl/d;MSTB/d;Mstb/day|1000 barrel/day|m^3/s
flow rate|L/s;l/s|liter/second|m^3/s
velocity|fpm|foot/minute|m/s
velocity|fps;ft/sec|foot/sec|m/s
viscosity|cp;cps|centipoise|Pa s
viscosity|mPas;mPa s|mPa s|Pa s
viscosity|Pas;Pa s|Pa s|Pa s
compressibility|psi-1;psi^-1;/psi;sip|1/psi|1/Pa
compressibility|bar-1;bar^-1;/bar|1/bar|1/Pa
compressibility|kPa-1;kPa^-1|1/kPa|1/Pa
compressibility|MPa-1;MPa^-1|1/MPa|1/Pa
compressibility|Pa-1;Pa^-1|1/Pa|1/Pa
compressibility|microsip;usip|1e-6/psi|1/Pa
expansivity|degC-1;degC^-1;/degC;in/in/degC;m/m/degC|1/degC|1/K
expansivity|degF-1;degF^-1;/degF;in/in/degF;in/in-degF|1/degF|1/K
expansivity|K-1;K^-1;/K;m/m/K|1/kelvin|1/K
torque|ft-lb;ft-lbs;ft.lbf;ft.lb;ft lbf;ft lb;lbf-ft;lb-ft;lbf.ft;lbf ft|foot lbf|N m
torque|Nm;N m|newton meter|N m
torque|kNm;kN m|kN meter|N m
torque|kft-lbf;kft-lb;kft.lbf;klbf-ft|1000 foot lbf|N m
permeability|md|millidarcy|m^2
permeability|darcy|darcy|m^2
productivity index|bpd/psi;stb/d/psi;STB/d/psi;stb/day/psi;bbl/day/psi;bbl/(d.psi);stb/(d.psi)|barrel/day/psi|m^3/s/Pa
productivity index|Sm3/d/bar;sm3/d/bar;m3/day/bar;m3/(d.bar);Sm3/(d.bar)|meter^3/day/bar|m^3/s/Pa
temperature|deg C|tempC(70)|K
temperature|deg F|tempF(70)|K
LIST
} >gnu-units.csv.new
mv gnu-units.csv.new gnu-units.csv
