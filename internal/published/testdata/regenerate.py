#!/usr/bin/env python3
"""Works out again every row of the case files that another library computed.

    internal/published/testdata/regenerate.py [EVERY]

compares each row (or each EVERYth) with what the library says now, to half a unit
of the last printed digit or what the row allows, and exits with 1 where one differs. A library that isn't
installed is named and its rows are skipped. Debian 12 has them:

    apt-get install python3-fluids python3-iapws python3-gsw python3-scipy

python3-fluids 1.0.22, python3-iapws 1.5.3 (which calls itself 1.5.2), python3-gsw
3.6.16, python3-scipy 1.10.1: the versions that the rows name.

Not worked out again: rows of a library's documentation, which are quoted; the
simulators' benchmark of hydrostatics-flowing.csv, the nozzles of choke-nozzle.csv and
the tables of fluid-control.csv, which were read in those projects' sources at the
commit that the rows name.
"""
import csv
import importlib
import math
import os
import sys

FOLDER = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..")
UNITS = {"MPa": 1e6, "Pa": 1.0, "m": 1.0, "m3/s": 1.0, "Pa/m": 1.0, "Pa.s^n": 1.0, "K/m": 1.0, "m3": 1.0}


def inputs(text):
    """The inputs of a row in SI; temperatures in kelvin."""
    values = {}
    for part in text.split(";"):
        name, value = part.strip().split("=", 1)
        number, _, unit = value.partition(" ")
        try:
            x = float(number)
        except ValueError:
            values[name] = value
            continue
        if unit == "degC":
            x += 273.15
        elif unit and unit != "K":
            x *= UNITS[unit]
        values[name] = x
    return values


def tolerance(row, number):
    """Half a unit of the last printed digit, or what the row allows in the printed unit."""
    allowed, _, unit = row["tolerance"].partition(" ")
    if unit and unit == row["printed"].partition(" ")[2]:
        return max(float(allowed), half_digit(number))
    return half_digit(number)


def half_digit(number):
    mantissa, _, exponent = number.lower().partition("e")
    decimals = len(mantissa.partition(".")[2])
    return 0.5 * 10 ** (int(exponent or 0) - decimals)


def friction(name):
    def compute(lib, x):
        return getattr(lib.friction, name)(Re=x["Re"], eD=x["roughness"])
    return compute


def water(attribute, scale=1.0):
    def compute(lib, x):
        return scale * getattr(lib.IAPWS95(P=x["absolute"] / 1e6, T=x["t"]), attribute)
    return compute


def region1(lib, x):
    return lib.IAPWS97(P=x["absolute"] / 1e6, T=x["t"]).rho


def seawater(lib, x):
    return lib.rho_t_exact(x["salinity"] * 1000, x["t"] - 273.15, x["p"] / 1e4)


ATMOSPHERE = 101325.0


def seawater_iapws(lib, x):
    return lib.SeaWater(T=x["t"], P=(x["p"] + ATMOSPHERE) / 1e6, S=x["salinity"]).rho


def density(lib, pascal, kelvin):
    return lib.IAPWS95(P=pascal / 1e6, T=kelvin).rho


def bleed(lib, x):
    """Volume of warmed water that a rigid space doesn't hold at its pressure."""
    p = x["p"] + ATMOSPHERE
    return x["volume"] * (density(lib, p, x["from"]) / density(lib, p, x["to"]) - 1)


def rise(lib, x):
    """Rise of pressure, MPa, of water that keeps its density while it warms."""
    p = x["p"] + ATMOSPHERE
    rho = density(lib, p, x["from"])
    return (brentq(lambda q: density(lib, q, x["to"]) - rho, p, p + 1.5e8) - p) / 1e6


def column(lib, x):
    """Pressure, MPa, below water at rest in a straight temperature: Runge and Kutta."""
    def slope(z, p):
        return 9.80665 * lib.IAPWS97(P=p / 1e6, T=x["top"] + x["gradient"] * z).rho
    p, steps = x["absolute"], 40
    h = x["depth"] / steps
    for i in range(steps):
        z = i * h
        a = slope(z, p)
        b = slope(z + h / 2, p + h / 2 * a)
        c = slope(z + h / 2, p + h / 2 * b)
        p += h / 6 * (a + 2 * b + 2 * c + slope(z + h, p + h * c))
    return p / 1e6


def shear(x, stress):
    """Rate of shear of a Herschel-Bulkley fluid, with the sign of the stress."""
    over = abs(stress) - x.get("yield", 0.0)
    return math.copysign((over / x["K"]) ** (1 / x["n"]), stress) if over > 0 else 0.0


def laminar_rate(lib, x):
    """Rate in a pipe or concentric annulus from the stress field, by quadrature."""
    outer, inner, g, tau0 = x["outer"] / 2, x["inner"] / 2, x["gradient"], x.get("yield", 0.0)

    def edges(level):
        # Where the stress g/2 (level/r - r) is plus or minus the yield stress.
        b = tau0 / g
        return [r for r in (math.sqrt(b * b + level) - b, math.sqrt(b * b + level) + b) if inner < r < outer]

    def integral(power, level):
        points = [inner] + edges(level) + [outer]
        total = 0.0
        for a, b in zip(points, points[1:]):
            total += lib.quad(lambda r: r ** power * shear(x, g / 2 * (level / r - r if r else 0.0)), a, b,
                              epsabs=0, epsrel=1e-12, limit=400)[0]
        return total

    level = 0.0
    if inner > 0:
        level = brentq(lambda l: integral(0, l), inner ** 2, outer ** 2)
    return -math.pi * integral(2, level)


def brentq(f, a, b):
    if f(a) == f(b) == 0:
        return (a + b) / 2
    return importlib.import_module("scipy.optimize").brentq(f, a, b, xtol=1e-16, rtol=1e-14)


# By source and quantity: the module, and how it computes the printed number.
COMPUTED = {
    ("python3-fluids 1.0.22", "Darcy factor, Colebrook"): ("fluids", friction("Colebrook")),
    ("python3-fluids 1.0.22", "Darcy factor, Churchill"): ("fluids", friction("Churchill_1977")),
    ("python3-fluids 1.0.22", "Darcy factor, Haaland"): ("fluids", friction("Haaland")),
    ("python3-fluids 1.0.22", "Darcy factor, Swamee-Jain"): ("fluids", friction("Swamee_Jain_1976")),
    ("python3-fluids 1.0.22", "Darcy factor, Chen"): ("fluids", friction("Chen_1979")),
    ("python3-fluids 1.0.22", "Darcy factor, laminar"): ("fluids", lambda lib, x: lib.friction.friction_laminar(x["Re"])),
    ("python3-iapws 1.5.3", "density"): ("iapws", water("rho")),
    ("python3-iapws 1.5.3", "density, IAPWS-IF97"): ("iapws", region1),
    ("python3-iapws 1.5.3", "density of seawater"): ("iapws", seawater_iapws),
    ("python3-iapws 1.5.3", "volume to bleed, water in a rigid space"): ("iapws", bleed),
    ("python3-iapws 1.5.3", "rise of water in a rigid space"): ("iapws", rise),
    ("python3-iapws 1.5.3", "column, absolute pressure, IAPWS-IF97"): ("iapws", column),
    ("python3-iapws 1.5.3", "viscosity"): ("iapws", water("mu", 1e3)),
    ("python3-iapws 1.5.3", "expansivity"): ("iapws", water("alfav")),
    ("python3-iapws 1.5.3", "compressibility"): ("iapws", water("kappa")),
    ("python3-gsw 3.6.16 (TEOS-10)", "density of seawater"): ("gsw", seawater),
    ("exact one-dimensional laminar solution by quadrature (scipy 1.10.1)", "laminar rate"): ("scipy.integrate", laminar_rate),
}


def main():
    every = int(sys.argv[1]) if len(sys.argv) > 1 else 1
    modules, counts, faults, left = {}, {}, [], {}
    for file in sorted(os.listdir(FOLDER)):
        if not file.endswith(".csv"):
            continue
        with open(os.path.join(FOLDER, file), newline="") as rows:
            for line, row in enumerate(csv.DictReader(rows), 2):
                key = (row["source"], row["quantity"])
                if "IF97" in row["where"]:
                    key = (row["source"], row["quantity"] + ", IAPWS-IF97")
                if key not in COMPUTED:
                    if row["status"] == "reference-library":
                        left[key] = left.get(key, 0) + 1
                    continue
                module, compute = COMPUTED[key]
                if module not in modules:
                    try:
                        modules[module] = importlib.import_module(module)
                    except ImportError:
                        modules[module] = None
                        print(f"skipped: no Python module {module} here; see the head of this script")
                count = counts.setdefault(key, [0, 0, 0.0])
                count[0] += 1
                if modules[module] is None or (count[0] - 1) % every:
                    continue
                number = row["printed"].split(" ")[0]
                got, want = compute(modules[module], inputs(row["inputs"])), float(number)
                share = abs(got - want) / tolerance(row, number)
                count[1] += 1
                count[2] = max(count[2], share)
                if not share <= 1.0001 and not abs(got - want) <= 1e-9 * abs(want):
                    faults.append(f"{file}:{line} {row['quantity']} ({row['inputs']}): {got!r}, the row has {number}")
    for (source, quantity), (rows, compared, worst) in sorted(counts.items()):
        print(f"{compared:4d} of {rows:4d} compared, worst {worst:.2f} of what is allowed: {quantity} ({source})")
    for (source, quantity), rows in sorted(left.items()):
        print(f"   - of {rows:4d} quoted: {quantity} ({source})")
    for fault in faults:
        print("DIFFERS", fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
