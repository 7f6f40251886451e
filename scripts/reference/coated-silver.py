"""Reflectance of silver under a film, by characteristic matrices instead of Airy's sum.

Macleod, H. A. Thin-Film Optical Filters: B, C from the film's matrix, r = (n0 B - C)/(n0 B + C).
Run with NumPy 1.24.2: /usr/bin/python3 scripts/reference/coated-silver.py
"""
import numpy as np


def reflectance(film, metal, thickness, wavelength):
    delta = 2 * np.pi * film * thickness / wavelength
    # Index n - ik in the engineering convention of the matrices.
    b = np.cos(delta) + 1j * np.sin(delta) / film * metal
    c = 1j * film * np.sin(delta) + np.cos(delta) * metal
    r = (b - c) / (b + c)
    return abs(r) ** 2


silver = {443: 0.04 - 2.462j, 549: 0.06 - 3.586j, 617: 0.06 - 4.152j}
for film in (2.07 + 0j, 2.2 - 0.25j):
    for wavelength, metal in silver.items():
        values = [reflectance(film, metal, d, wavelength) for d in (0, 25, 50, 100, 200)]
        print(film, wavelength, [round(float(v), 6) for v in values])
