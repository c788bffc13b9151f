#!/usr/bin/env python3
"""Makes a campaign of N firings with M samples each, for timing only. All of it is invented.

usage: make_campaign.py N M FOLDER

The records are simple (a rise, the steady pressure of the grain's surface by the web burned, an exponential tail-off) with
seeded noise, so that making them does not depend on the program that is timed. Every firing has its own throat and so its
own pressure.
"""
import itertools
import math
import os
import random
import sys

firings, samples, folder = int(sys.argv[1]), int(sys.argv[2]), sys.argv[3]
os.makedirs(os.path.join(folder, "traces"), exist_ok=True)
with open(os.path.join(folder, "campaign.yaml"), "w", encoding="utf-8") as out:
    out.write(
        "format: burnlaw-campaign/1\n"
        "title: Invented campaign for timing\n"
        "ambient_pressure: 101.325 kPa\n"
        "formulations:\n  timing:\n    title: Invented propellant for timing\n    density: 1.80 ± 0.01 g/cm3\n"
        "trace:\n  pressure_kind: gauge\n"
    )

AMBIENT = 0.101325  # MPa
DENSITY, VELOCITY, COEFFICIENT, EXPONENT = 1800.0, 900.0, 6.0e-3, 0.35  # kg/m3, m/s, m/s at 1 MPa, 1
OUTER, CORE, LENGTH, SEGMENTS = 0.040, 0.016, 0.0640, 2  # m; nearly neutral
WEB = (OUTER - CORE) / 2
STEPS = 400


def surface(web):
    """Of the ends and the core, at a web burned [m2]."""
    core, length = CORE + 2 * web, LENGTH - 2 * web
    return SEGMENTS * math.pi * (core * length + (OUTER**2 - core**2) / 2)


MASS = DENSITY * SEGMENTS * math.pi / 4 * (OUTER**2 - CORE**2) * LENGTH
# of the steady pressure to that at the start, where m' = rho S r(P) = P At / c*
COURSE = [(surface((k + 0.5) * WEB / STEPS) / surface(0)) ** (1 / (1 - EXPONENT)) for k in range(STEPS)]
random.seed(20260101)
rows = []
noise = [random.gauss(0, 2e-3) for _ in range(10007)]  # MPa; a prime length, so that no record repeats another
for number in range(firings):
    pressure = 1.0 * 6.0 ** ((number % 997) / 996.0)  # MPa, gauge
    absolute = pressure + AMBIENT
    rate = COEFFICIENT * absolute**EXPONENT * math.exp(random.gauss(0, 0.01))
    throat = 2 * math.sqrt(surface(0) * DENSITY * rate * VELOCITY / (absolute * 1e6) / math.pi)
    lasting = [WEB / STEPS / (rate * share**EXPONENT) for share in COURSE]
    burn = sum(lasting)
    ends = list(itertools.accumulate(lasting))
    quiet, span = 0.2, burn + 0.8
    step = span / (samples - 1)
    shift = random.randrange(10007)
    with open(os.path.join(folder, "traces", f"f{number:05d}.csv"), "w", encoding="utf-8") as out:
        out.write("time [s],pressure [MPa]\n")
        lines = []
        layer = 0
        for i in range(samples):
            t = i * step - quiet
            if t < 0:
                p = 0.0
            elif t < burn:
                while ends[layer] < t and layer < STEPS - 1:
                    layer += 1
                p = (absolute * COURSE[layer] - AMBIENT) * (1 - math.exp(-t / 0.008))
            else:
                p = (absolute * COURSE[-1] - AMBIENT) * math.exp(-(t - burn) / 0.012)
            lines.append(f"{i * step:.6f},{p + noise[(i + shift) % 10007]:.6f}\n")
        out.write("".join(lines))
    rows.append(
        f"f{number:05d},timing,traces/f{number:05d}.csv,bates,{SEGMENTS},{OUTER * 1e3},{CORE * 1e3},{LENGTH * 1e3},"
        f"{throat * 1e3:.3f},{MASS * 1e3:.2f}\n"
    )
with open(os.path.join(folder, "firings.csv"), "w", encoding="utf-8") as out:
    out.write(
        "firing,formulation,trace,grain,segments,outer_diameter [mm],core_diameter [mm],segment_length [mm],"
        "throat_diameter [mm],propellant_mass [g]\n"
    )
    out.write("".join(rows))
