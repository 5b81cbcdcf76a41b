#!/usr/bin/env python3
"""Makes the pattern tables of handreach.loadout with nec2c, a general method-of-moments code (Debian package nec2c, 1.3).

    python3 pattern_nec.py OUTPUT_FOLDER [WORK_FOLDER]      all tables; about an hour on one core
    python3 pattern_nec.py rows OUTPUT.csv                  check rows at lengths and frequencies that are not in the tables

Box: 60 x 35 x 110 mm of wires 1 mm in radius, cells of 10 mm, top at z = 0, the whip on the middle of the top. Gains are vertical
components, power mean over azimuth, losses in, mismatch not, each corrected by the average gain of the run:
gain - 10 log(average / (ideal * efficiency)). Runs are kept in the work folder and not repeated.
"""
import hashlib
import math
import os
import subprocess
import sys

C = 299.8  # m/us, as in the code
BOX = """CE
GW 1 11 -0.03 -0.0175 -0.11 -0.03 -0.0175 0 0.001
GM 0 6 0 0 0 0.01 0 0 1
GW 2 11 -0.03 0.0175 -0.11 -0.03 0.0175 0 0.001
GM 0 6 0 0 0 0.01 0 0 2
GW 3 11 -0.03 -0.00875 -0.11 -0.03 -0.00875 0 0.001
GM 0 2 0 0 0 0 0.00875 0 3
GW 4 11 0.03 -0.00875 -0.11 0.03 -0.00875 0 0.001
GM 0 2 0 0 0 0 0.00875 0 4
GW 5 6 -0.03 -0.0175 -0.11 0.03 -0.0175 -0.11 0.001
GM 0 11 0 0 0 0 0 0.01 5
GW 6 6 -0.03 0.0175 -0.11 0.03 0.0175 -0.11 0.001
GM 0 11 0 0 0 0 0 0.01 6
GW 7 6 -0.03 -0.00875 -0.11 0.03 -0.00875 -0.11 0.001
GM 0 2 0 0 0 0 0.00875 0 7
GW 8 6 -0.03 -0.00875 0 0.03 -0.00875 0 0.001
GM 0 2 0 0 0 0 0.00875 0 8
GW 9 4 -0.03 -0.0175 -0.11 -0.03 0.0175 -0.11 0.001
GM 0 11 0 0 0 0 0 0.01 9
GW 10 4 0.03 -0.0175 -0.11 0.03 0.0175 -0.11 0.001
GM 0 11 0 0 0 0 0 0.01 10
GW 11 4 -0.02 -0.0175 -0.11 -0.02 0.0175 -0.11 0.001
GM 0 4 0 0 0 0.01 0 0 11
GW 12 4 -0.02 -0.0175 0 -0.02 0.0175 0 0.001
GM 0 4 0 0 0 0.01 0 0 12
"""
WORK = "/tmp/pattern_nec"


def run(deck):
    """Text of a run, from the work folder if it was made before."""
    os.makedirs(WORK, exist_ok=True)
    stem = os.path.join(WORK, hashlib.sha256(deck.encode()).hexdigest()[:24])
    if not os.path.exists(stem + ".out"):
        own = "%s.%d" % (stem, os.getpid())
        with open(own + ".nec", "w") as f:
            f.write(deck)
        subprocess.run(["nec2c", "-i", own + ".nec", "-o", own + ".tmp"], check=True)
        slim(own)
        os.replace(own + ".out", stem + ".out")
    with open(stem + ".out") as f:
        return f.read()


def slim(stem):
    """Keeps impedance, efficiency, average gain and pattern of a run."""
    theta = {}
    impedance, efficiency, average = None, 1.0, 1.0
    lines = open(stem + ".tmp").read().splitlines()
    for i, line in enumerate(lines):
        if "ANTENNA INPUT PARAMETERS" in line:
            part = lines[i + 3].split()
            impedance = (float(part[6]), float(part[7]))
        elif "EFFICIENCY" in line:
            efficiency = float(line.split()[2]) / 100
        elif "AVERAGE POWER GAIN" in line:
            average = float(line.split()[3])
        elif "RADIATION PATTERNS" in line:
            for row in lines[i + 5:]:
                part = row.split()
                if len(part) < 11 or not part[0][0].isdigit():
                    break
                theta.setdefault(float(part[0]), []).append((float(part[1]), float(part[2])))
    with open(stem + ".out", "w") as f:
        f.write("%r %r %r %r\n" % (impedance[0], impedance[1], efficiency, average))
        for t in sorted(theta):
            gains = [g for phi, g in theta[t] if phi < 359.9]
            mean = sum(10 ** (g / 10) for g in gains) / len(gains)
            f.write("%g %.4f\n" % (90 - t, 10 * math.log10(mean) if mean > 1e-20 else -99))
    os.remove(stem + ".tmp")
    os.remove(stem + ".nec")


def result(text, ideal):
    head, *rows = text.splitlines()
    r, x, efficiency, average = map(float, head.split())
    correction = 10 * math.log10(average / (ideal * efficiency)) if rows else 0
    return r, x, efficiency, {float(a): float(b) - correction for a, b in (row.split() for row in rows)}


def ground(length_wavelengths):
    """Straight wire on perfect ground, radius 1e-4 wavelengths."""
    segments = 81
    deck = ("CE\nGW 1 %d 0 0 0 0 0 %.6f 1e-4\nGE 1\nGN 1\nEX 0 1 1 0 1 0\nFR 0 1 0 0 299.8 0\n"
            "RP 0 91 2 1001 0 0 1 90\nEN\n" % (segments, length_wavelengths))
    return result(run(deck), 2)


def box(length_wavelengths, mhz, wire, radius=0.001, load=None, pattern=True):
    """Whip on the box; wire: with the quarter-wave counterpoise; load: (ohm, henry) a metre."""
    wavelength = C / mhz
    cell = max(0.01, wavelength / 150)
    length = length_wavelengths * wavelength
    n = max(5, round(length / cell))
    deck = BOX + "GW 30 %d 0 0 0 0 0 %.6f %g\n" % (n, length, radius)
    if wire:
        down = 0.95 * wavelength / 4 - 0.01
        deck += "GW 40 1 0.03 0 0 0.04 0 0 0.0005\nGW 41 %d 0.04 0 0 0.04 0 %.6f 0.0005\n" % (
            max(3, round(down / cell)), -down)
    deck += "GE 0\n"
    if load:
        deck += "LD 2 30 1 %d %.6g %.8g 0\n" % (n, load[0], load[1])
    deck += "EX 0 30 1 0 1 0\nFR 0 1 0 0 %.6g 0\n" % mhz
    deck += "RP 0 37 37 1001 0 0 5 10\nEN\n" if pattern else "XQ\nEN\n"
    return result(run(deck), 1)


def helical(length_wavelengths, mhz, wire, q=100, radius=0.003):
    """Whip with spread inductance of coil quality q that brings it to resonance; none where it needs none."""
    omega = 2 * math.pi * mhz * 1e6
    length = length_wavelengths * C / mhz

    def at(ohms_per_m, pattern=False):
        load = (ohms_per_m / q, ohms_per_m / omega) if ohms_per_m > 0 else None
        return box(length_wavelengths, mhz, wire, radius, load, pattern)

    low, x_low = 0.0, at(0)[1]
    if x_low >= 0:
        return at(0, True)
    high = -x_low / length
    x_high = at(high)[1]
    while x_high < 0:
        low, x_low = high, x_high
        high *= 1.5
        x_high = at(high)[1]
    for _ in range(12):
        middle = low - x_low * (high - low) / (x_high - x_low)
        middle = min(max(middle, low + 0.02 * (high - low)), high - 0.02 * (high - low))
        x = at(middle)[1]
        if abs(x) < 1:
            break
        if x < 0:
            low, x_low = middle, x
        else:
            high, x_high = middle, x
    return at(middle, True)


LENGTHS = [round(0.02 * i, 2) for i in range(1, 51)]
HELICAL_LENGTHS = [0.03, 0.04, 0.05, 0.06, 0.08, 0.10, 0.12, 0.14, 0.16, 0.20, 0.24]
HELICAL_MHZ = [70, 150, 235, 385, 450, 515, 620, 760, 910]
MHZ = [70, 115, 150, 185, 235, 300, 385, 450, 515, 620, 690, 760, 830, 910, 1000]
ELEVATIONS = range(-85, 86, 5)


def table(path, title, rows, columns):
    with open(path, "w") as f:
        f.write("# %s\n# made by: src/test/reference/pattern_nec.py with nec2c, a general method-of-moments code\n" % title)
        f.write("# gain of the vertical component, dBi, power mean over azimuth, mismatch not counted, rounded to 0.01 dB\n")
        f.write(columns + "\n")
        for row in rows:
            f.write(row + "\n")


def line(keys, gains, elevations):
    return ",".join("%g" % k for k in keys) + "," + ",".join("%.2f" % max(gains[e], -40) for e in elevations)


def tables(folder):
    marks = ",".join("e%d" % e for e in ELEVATIONS)
    up = range(0, 90, 3)
    table(os.path.join(folder, "pattern-wire.csv"),
          "straight vertical wire on perfect ground, radius 1e-4 wavelengths, lossless; length in wavelengths",
          [line([w], ground(w)[3], up) for w in LENGTHS],
          "length_wavelengths," + ",".join("e%d" % e for e in up))
    for wire in (False, True):
        name = "chassis-counterpoise" if wire else "chassis"
        words = "with a quarter-wave wire hung from the antenna base" if wire else "bare"
        rows = []
        for mhz in MHZ:
            rows += [line([mhz, w], box(w, mhz, wire)[3], ELEVATIONS) for w in LENGTHS]
            print(name, mhz, flush=True)
        table(os.path.join(folder, "pattern-%s.csv" % name),
              "whip of 1 mm radius on a box of 60 x 35 x 110 mm, %s, lossless; length in wavelengths" % words,
              rows, "frequency_mhz,length_wavelengths," + marks)
    for wire in (False, True):
        name = "helical-counterpoise" if wire else "helical"
        words = "with a quarter-wave wire hung from the antenna base" if wire else "bare"
        rows = []
        for mhz in HELICAL_MHZ:
            for w in HELICAL_LENGTHS:
                r, x, efficiency, gains = helical(w, mhz, wire)
                rows.append(line([mhz, w], gains, ELEVATIONS))
            print(name, mhz, flush=True)
        table(os.path.join(folder, "pattern-%s.csv" % name),
              "whip of 3 mm radius tuned to resonance by spread inductance of quality 100, coil loss in, on a box of "
              "60 x 35 x 110 mm, %s; length in wavelengths" % words,
              rows, "frequency_mhz,length_wavelengths," + marks)


def check_rows(path):
    """Lengths and frequencies between those of the tables, in long form."""
    with open(path, "w") as f:
        f.write("# source: nec2c, a general method-of-moments code, at lengths and frequencies that are not in the tables\n"
                "# made by: src/test/reference/pattern_nec.py rows, rounded to 0.01 dB\n"
                "# vertical component, dBi, power mean over azimuth, mismatch not counted\n"
                "radiator,mount,frequency_mhz,length_wavelengths,elevation_deg,gain_dbi\n")

        def rows(radiator, mount, mhz, length, gains, elevations, less=0.0):
            for e in elevations:
                f.write("%s,%s,%g,%g,%d,%.2f\n" % (radiator, mount, mhz, length, e, max(gains[e], -40) - less))

        for length in (0.07, 0.19, 0.27, 0.33, 0.41, 0.47, 0.55, 0.59, 0.625, 0.67, 0.73, 0.81):
            gains = ground(length)[3]
            rows("monopole", "perfect-ground", 299.8, length, gains, range(0, 86, 5))
            rows("half-wave-dipole", "free-space", 299.8, 2 * length, gains, range(0, 86, 5), 10 * math.log10(2))
        for wire in (False, True):
            mount = "chassis+counterpoise" if wire else "chassis"
            for mhz, lengths in ((146, (0.05, 0.2387, 0.37, 0.594, 0.73)), (155, (0.25, 0.45, 0.55, 0.79)),
                                 (222, (0.13, 0.29, 0.53, 0.69)), (446, (0.17, 0.2387, 0.35, 0.49, 0.625, 0.77)),
                                 (465, (0.25, 0.41, 0.57, 0.71)), (868, (0.11, 0.25, 0.47, 0.61, 0.75))):
                for length in lengths:
                    rows("monopole", mount, mhz, length, box(length, mhz, wire)[3], range(-85, 86, 5))
            for mhz, lengths in ((146, (0.036, 0.073, 0.11)), (160, (0.09,)), (465, (0.07, 0.11, 0.15)), (800, (0.09, 0.13))):
                for length in lengths:
                    rows("short-helical", mount, mhz, length, helical(length, mhz, wire)[3], range(-85, 86, 5))


if __name__ == "__main__":
    if sys.argv[1] == "rows":
        check_rows(sys.argv[2])
        sys.exit()
    if len(sys.argv) > 2:
        WORK = sys.argv[2]
    tables(sys.argv[1])
