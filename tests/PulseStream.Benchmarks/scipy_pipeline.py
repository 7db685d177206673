"""The stages of the signal core with a general-purpose library, as the yardstick that it is measured against.

Two lights in memory -> logarithm, band-pass 0.5 to 8 Hz (fourth order, one way), peaks of the pulse, and once a second
over the last eight seconds: covariance of red and infrared (ratio of ratios) and the autocorrelation by FFT (period).
Everything is vectorised over the whole recording; nothing is decided about a second.

Usage: python3 scipy_pipeline.py [SECONDS] [HZ] [PASSES]; prints samples (red and infrared together count one) a second.
"""

import sys
import time

import numpy as np
from scipy.fft import irfft, next_fast_len, rfft
from scipy.signal import butter, find_peaks, sosfilt

WINDOW_SECONDS = 8
BATCH = 64  # windows a batch: stays within the cache


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


def pipeline(red, infrared, hz):
    """Beats, and for each second the ratio of ratios and the period in seconds."""
    sections = butter(2, (0.5, 8), "bandpass", fs=hz, output="sos")
    red = sosfilt(sections, np.log(red))
    infrared = sosfilt(sections, np.log(infrared))
    beats, _ = find_peaks(-infrared, distance=int(0.27 * hz), prominence=0.3 * np.std(infrared))

    length = WINDOW_SECONDS * hz
    red_windows = np.lib.stride_tricks.sliding_window_view(red, length)[::hz]
    infrared_windows = np.lib.stride_tricks.sliding_window_view(infrared, length)[::hz]
    size = next_fast_len(2 * length, real=True)
    shortest, longest = int(0.27 * hz), int(1.8 * hz)
    ratios, periods = [], []
    for start in range(0, len(red_windows), BATCH):
        r = red_windows[start:start + BATCH]
        i = infrared_windows[start:start + BATCH]
        r = r - r.mean(axis=1, keepdims=True)
        i = i - i.mean(axis=1, keepdims=True)
        ratios.append(np.einsum("ij,ij->i", r, i) / np.einsum("ij,ij->i", i, i))
        spectrum = rfft(i, size)
        same = irfft(spectrum.real ** 2 + spectrum.imag ** 2, size)
        periods.append((shortest + np.argmax(same[:, shortest:longest], axis=1)) / hz)

    return beats, np.concatenate(ratios), np.concatenate(periods)


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
