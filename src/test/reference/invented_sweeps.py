"""Makes the two sweeps in elevation-samples/invented-bench: an invented whip on an invented box, not a measurement.

Method of moments (nec2c 1.3, a general wire code): quarter-wave whip of 460 mm, 2 mm thick, on a box of 60 x 35 x 110 mm, without and
with a quarter-wave counterpoise wire of 450 mm, 130 to 220 MHz in steps of 2 MHz. Takes some minutes.

Run from the project's top folder: python3 src/test/reference/invented_sweeps.py
"""

import cmath
import math
import pathlib
import re
import subprocess
import tempfile

OUT = pathlib.Path("elevation-samples/invented-bench")
BOX = """\
CE
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
WHIP = "GW 30 46 0 0 0 0 0 0.46 0.001\n"
WIRE = "GW 40 1 0.03 0 0 0.04 0 0 0.0005\nGW 41 45 0.04 0 0 0.04 0 -0.45 0.0005\n"
RUN = "GE 0\nEX 0 30 1 0 1 0\nFR 0 46 0 0 130 2\nXQ\nEN\n"


def impedances(cards):
    with tempfile.TemporaryDirectory() as folder:
        deck = pathlib.Path(folder, "deck.nec")
        deck.write_text(BOX + cards + RUN)
        out = pathlib.Path(folder, "deck.out")
        subprocess.run(["nec2c", "-i", str(deck), "-o", str(out)], check=True)
        return parsed(out.read_text())


def parsed(text):
    found = []
    mhz = None
    lines = text.splitlines()
    for i, line in enumerate(lines):
        frequency = re.search(r"FREQUENCY\s*:\s*([\d.E+-]+)\s*MHz", line, re.IGNORECASE)
        if frequency:
            mhz = float(frequency.group(1))
        if "ANTENNA INPUT PARAMETERS" in line:
            row = next(r.split() for r in lines[i + 1 : i + 8] if len(r.split()) >= 9 and r.split()[0].isdigit())
            found.append((mhz, complex(float(row[6]), float(row[7]))))
    return found


def gamma(ohm):
    return (ohm - 50) / (ohm + 50)


def write(bare, wired):
    head = "! INVENTED: computed by the method of moments for an invented box, not measured.\n"
    rows = [f"{mhz:.1f} {gamma(z).real:.5f} {gamma(z).imag:.5f}" for mhz, z in bare]
    (OUT / "quarter-wave-whip.s1p").write_text(
        head + "! Quarter-wave whip of 460 mm on the bare box, no hand.\n# MHz S RI R 50\n" + "\n".join(rows) + "\n"
    )
    rows = [
        f"{mhz / 1000:.6f} {abs(gamma(z)):.5f} {math.degrees(cmath.phase(gamma(z))):.3f}" for mhz, z in wired
    ]
    (OUT / "quarter-wave-whip-with-wire.s1p").write_text(
        head
        + "! The same with a counterpoise wire of 450 mm hung beside the antenna's foot.\n"
        + "[Version] 2.0\n# GHz S MA R 50\n[Number of Ports] 1\n"
        + f"[Number of Frequencies] {len(rows)}\n[Network Data]\n"
        + "\n".join(rows)
        + "\n[End]\n"
    )


if __name__ == "__main__":
    write(impedances(WHIP), impedances(WHIP + WIRE))
