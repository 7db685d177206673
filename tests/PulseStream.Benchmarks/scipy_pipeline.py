"""The stages of the signal core with a general-purpose library: the yardstick that it is measured against.

Two lights in memory -> logarithm, band-pass 0.5 to 8 Hz, peaks of the pulse, and once a second over the last eight
seconds: covariance of red and infrared (ratio of ratios) and the autocorrelation by FFT (period). Every stage runs over
the whole recording at once; no second is judged.

Usage: python3 scipy_pipeline.py [SECONDS] [HZ] [PASSES]; prints samples (red and infrared together count one) a second,
the median of the passes.
"""

import sys
import time

import numpy as np
from scipy.fft import irfft, next_fast_len, rfft
from scipy.signal import butter, find_peaks, sosfilt

WINDOW_SECONDS = 8
SHORTEST_PERIOD_SECONDS = 0.27
LONGEST_PERIOD_SECONDS = 1.8


def finger(seconds, hz):
    """An invented finger at rest: 72 beats and 15 breaths a minute, whole counts of an 18-bit converter."""
    t = np.arange(seconds * hz) / hz
    phase = 2 * np.pi * 1.2 * t
    pulse = 0.01 * (np.sin(phase) + 0.4 * np.sin(2 * phase))
    breath = 0.002 * np.sin(2 * np.pi * 0.25 * t)
    noise = np.random.default_rng(1).uniform(-15, 15, (2, t.size))
    red = np.round(140_000 * np.exp(breath - 0.56 * pulse) + noise[0])
    infrared = np.round(150_000 * np.exp(breath - pulse) + noise[1])
    return red, infrared


def windows(x, hz):
    """The last eight seconds at the end of each second, one a row, less their mean."""
    rows = np.lib.stride_tricks.sliding_window_view(x, WINDOW_SECONDS * hz)[::hz]
    return rows - rows.mean(axis=1, keepdims=True)


def pipeline(red, infrared, hz):
    """Places of the beats, and for each second the ratio of ratios and the period in seconds."""
    sections = butter(4, (0.5, 8), "bandpass", fs=hz, output="sos")
    red = sosfilt(sections, np.log(red))
    infrared = sosfilt(sections, np.log(infrared))
    beats, _ = find_peaks(-infrared, distance=int(SHORTEST_PERIOD_SECONDS * hz), prominence=0.3 * infrared.std())

    r, i = windows(red, hz), windows(infrared, hz)
    ratios = np.einsum("ij,ij->i", r, i) / np.einsum("ij,ij->i", i, i)

    size = next_fast_len(2 * i.shape[1], real=True)
    spectrum = rfft(i, size)
    same = irfft(spectrum.real ** 2 + spectrum.imag ** 2, size)
    shortest, longest = int(SHORTEST_PERIOD_SECONDS * hz), int(LONGEST_PERIOD_SECONDS * hz)
    periods = (shortest + np.argmax(same[:, shortest:longest], axis=1)) / hz
    return beats, ratios, periods


def main(seconds=3600, hz=100, passes=5):
    red, infrared = finger(seconds, hz)
    pipeline(red, infrared, hz)
    speeds = []
    for _ in range(passes):
        start = time.perf_counter()
        pipeline(red, infrared, hz)
        speeds.append(red.size / (time.perf_counter() - start))

    print(f"{np.median(speeds):.0f}")


if __name__ == "__main__":
    main(*(int(argument) for argument in sys.argv[1:]))
