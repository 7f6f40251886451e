"""Light from an even panel on a small element below it, by summing over the panel.

Integrates cos(a) cos(b) / (pi r^2) over the panel by Gauss-Legendre points: not the closed form
of src/optics/light-panel.ts. Run with NumPy 2.4.6: python3 scripts/reference/panel-form-factor.py
"""
import numpy as np

points, weights = np.polynomial.legendre.leggauss(200)


def factor(width, height, distance, x=0.0, y=0.0):
    px = points * width / 2 - x
    py = points * height / 2 - y
    square = px[:, None] ** 2 + py[None, :] ** 2 + distance**2
    kernel = distance**2 / (np.pi * square**2)
    return float(weights @ kernel @ weights) * width * height / 4


for case in [(2, 2, 1), (300, 300, 450), (300, 300, 450, 54, 70), (200, 400, 120, 60, 0)]:
    print(case, round(factor(*case), 8))
