"""Writes the reference values of the band-pass with SciPy: coefficients.csv and output.csv beside this file."""

import csv
from pathlib import Path

import numpy as np
from scipy.signal import butter, sosfilt

LOW_HZ, HIGH_HZ = 0.5, 8.0
RATES_HZ = [25, 50, 62.5, 100, 250, 500, 1000]
SEED = 20261125
SAMPLES = 120
here = Path(__file__).parent


def write(name, header, rows):
    with open(here / name, "w", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header)
        writer.writerows(rows)


designs = [
    (order, rate, butter(order, [LOW_HZ, HIGH_HZ], "bandpass", fs=rate, output="sos"))
    for order in (1, 2, 3, 4)
    for rate in RATES_HZ
]
write(
    "coefficients.csv",
    ["order", "rate_hz", "section", "b0", "b1", "b2", "a1", "a2"],
    [
        [order, rate, section, *(repr(float(row[k])) for k in (0, 1, 2, 4, 5))]
        for order, rate, sos in designs
        for section, row in enumerate(sos)
    ],
)

# White noise on a step: every frequency, and a start from rest.
x = 1.0 + np.random.default_rng(SEED).standard_normal(SAMPLES)
chosen = [(order, rate, sos) for order, rate, sos in designs if (order, rate) in {(1, 25), (2, 100), (3, 62.5), (4, 500)}]
write(
    "output.csv",
    ["x", *(f"order{order}_rate{rate}" for order, rate, _ in chosen)],
    zip(map(repr, x.tolist()), *(map(repr, sosfilt(sos, x).tolist()) for _, _, sos in chosen)),
)
