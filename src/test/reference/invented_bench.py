"""Makes elevation-samples/invented-bench/bench.csv: an invented bench session, not a measurement.

Run from the project's top folder: python3 src/test/reference/invented_bench.py

The true differences below are chosen in the spirit of method-of-moments runs of whips on a box (a bare quarter-wave on a small
chassis is badly matched, a counterpoise wire mends that, a wire does little for an end-fed half-wave). Trials scatter by
remounting (own to each reading) and by the day (common to a trial). SWR follows a series resonance.
"""

import math
import pathlib
import random

OUT = pathlib.Path("elevation-samples/invented-bench/bench.csv")
DICE = random.Random(20240518)
CHANNEL = 155.0
TRIALS = 6
CONTROL = "factory helical"
WIRE = " with wire"
BASE = ["factory helical", "quarter-wave whip", "end-fed half-wave", "five-eighths whip"]
ANTENNAS = [b + w for w in ("", WIRE) for b in BASE]

# mounting: level of the control, scatter by remounting, scatter by the day, true differences over the control
MOUNTS = {
    "in hand": (-44.0, 0.75, 0.6, [0, 3.2, 4.4, 2.2, 0.5, 4.9, 4.5, 4.0]),
    "chassis box": (-41.0, 0.30, 0.2, [0, -2.9, 5.8, 4.2, 0.4, 5.9, 5.9, 5.0]),
    "on instrument": (-42.5, 0.35, 0.3, [0, 1.4, 5.3, 3.3, 0.2, 4.8, 5.4, 4.4]),
}

# mounting: (resonance MHz, Q, R0 over 50 ohm) of each antenna
RESONANCES = {
    "in hand": [
        (154.6, 26, 0.80), (166.0, 11, 0.55), (155.4, 17, 0.95), (155.9, 15, 0.85),
        (151.8, 20, 0.90), (154.4, 8, 0.95), (155.2, 17, 0.95), (154.9, 13, 0.90),
    ],
    "chassis box": [
        (156.4, 40, 0.60), (189.0, 13, 0.60), (155.6, 22, 0.95), (156.2, 19, 0.80),
        (149.5, 27, 0.75), (155.5, 9, 1.20), (155.3, 22, 0.95), (155.1, 16, 0.90),
    ],
}
SWEEP = [150.0, 152.5, 155.0, 157.5, 160.0]
METER_SQUARE_LAW_UA = 18.0


def gamma(resonance, mhz):
    f0, q, r = resonance
    z = complex(r, q * r * (mhz / f0 - f0 / mhz))
    return abs((z - 1) / (z + 1))


def swr(resonance, mhz):
    g = gamma(resonance, mhz)
    return min((1 + g) / (1 - g), 30.0)


def band(resonance, s=3):
    f0, q, r = resonance
    if not 1 / s < r < s:
        return None
    return f0 / q * math.sqrt((s - r) * (s * r - 1) / s) / r


rows = []


def row(antenna, mount, quantity, value, unit, mhz="", trial="", note=""):
    rows.append(f"{antenna},{mount},{quantity},{value},{unit},{mhz},{trial},{note}")


for mount, (level, remount, day, truth) in MOUNTS.items():
    for trial in range(1, TRIALS + 1):
        today = DICE.gauss(0, day)
        turn = list(range(len(ANTENNAS)))
        turn = turn[trial % len(turn):] + turn[: trial % len(turn)]
        for i in turn:
            value = level + truth[i] + today + DICE.gauss(0, remount)
            row(ANTENNAS[i], mount, "received_level", f"{value:.1f}", "dBm", f"{CHANNEL:g}", trial)
            if mount == "in hand" and trial <= 3:
                current = METER_SQUARE_LAW_UA * 10 ** ((truth[i] + DICE.gauss(0, remount)) / 10)
                row(ANTENNAS[i], mount, "field_meter", f"{current:.0f}", "uA", f"{CHANNEL:g}", trial)

for mount, resonances in RESONANCES.items():
    for name, resonance in zip(ANTENNAS, resonances):
        for mhz in SWEEP:
            row(name, mount, "swr", f"{swr(resonance, mhz):.2f}", ":1", f"{mhz:g}")
        row(name, mount, "return_loss", f"{-20 * math.log10(gamma(resonance, CHANNEL)):.1f}", "dB", f"{CHANNEL:g}")
        row(name, mount, "resonance", f"{resonance[0]:.1f}", "MHz")
        width = band(resonance)
        if width:
            row(name, mount, "bandwidth", f"{width:.1f}", "MHz")

HEAD = """# INVENTED: this session never took place; made by src/test/reference/invented_bench.py for the sample plans.
# Antennas are generic kinds; no product is meant. Rows stand in the order in which they would have been taken.
# control = factory helical
# distance_m = 12
# tx_height_m = 1.5
# rx_height_m = 1.5
# ground = average
# antenna_size_m = 1.4
# noise_floor_dbm = -95
# overload_dbm = -15
# linearity_db = 0.3 rectangular 10 %
# phase_centre_db for five-eighths whip = 0.6
# phase_centre_db for five-eighths whip with wire = 0.6
# phase_centre_db for end-fed half-wave = 0.4
# phase_centre_db for end-fed half-wave with wire = 0.4
antenna,mount,quantity,value,unit,frequency_mhz,trial,note
"""
OUT.write_text(HEAD + "\n".join(rows) + "\n", encoding="utf-8")
