"""Reference values for tests/imaging/relight.

Run from the project's root with Debian's Python (python3-numpy):

    /usr/bin/python3 scripts/reference/relight.py

Writes tests/reference/relight.json. Inputs are small closed formulas, repeated in the tests.
"""

import json
from pathlib import Path

import numpy as np

count = 20
index = np.arange(count)
bearing = np.radians((index * 137.5) % 360)
height = np.radians(15 + 3.1 * index)
x = np.sin(bearing) * np.cos(height)
y = np.cos(bearing) * np.cos(height)
z = np.sin(height)
values = 120 + 60 * np.cos(1.7 * index) + index

# Biquadratic in the projected direction.
design = np.column_stack([x * x, y * y, x * y, x, y, np.ones(count)])
biquadratic = np.linalg.lstsq(design, values, rcond=None)[0]

# Hemispherical basis, four functions, closed forms.
bearing_xy = np.arctan2(y, x)
root = np.sqrt(z - z * z)
design = np.column_stack([
    np.full(count, 1 / np.sqrt(2 * np.pi)),
    np.sqrt(6 / np.pi) * np.sin(bearing_xy) * root,
    np.sqrt(3 / (2 * np.pi)) * (2 * z - 1),
    np.sqrt(6 / np.pi) * np.cos(bearing_xy) * root,
])
hemispherical = np.linalg.lstsq(design, values, rcond=None)[0]

# Symmetric matrix.
i, j = np.mgrid[0:12, 0:12]
matrix = np.cos(0.3 * i * j) + np.cos(0.7 * (i + j)) + np.where(i == j, 0.1 * i, 0)
eigenvalues, eigenvectors = np.linalg.eigh(matrix)

# Thin plate with linear drift over the stereographic place.
u, v = x / (1 + z), y / (1 + z)


def kernel(d):
    return np.where(d > 0, d * d * np.log(np.maximum(d, 1e-300)), 0.0)


def thin_plate(keep, at):
    distance = np.hypot(u[keep][:, None] - u[keep], v[keep][:, None] - v[keep])
    drift = np.column_stack([np.ones(len(keep)), u[keep], v[keep]])
    system = np.block([[kernel(distance), drift], [drift.T, np.zeros((3, 3))]])
    solved = np.linalg.solve(system, np.concatenate([values[keep], np.zeros(3)]))
    terms = np.concatenate([kernel(np.hypot(u[keep] - at[0], v[keep] - at[1])), [1, at[0], at[1]]])
    return float(terms @ solved)


everyone = np.arange(count)
left_out = [thin_plate(np.delete(everyone, k), (u[k], v[k])) for k in range(count)]

# Normals: least squares of a Lambertian surface.
normal = np.array([-0.2, 0.1, 1.0])
normal /= np.linalg.norm(normal)
light = np.column_stack([x, y, z])
brightness = 0.4 * light @ normal + 0.002 * np.sin(5 * index)
vector = np.linalg.lstsq(light, brightness, rcond=None)[0]

out = {
    "made": f"NumPy {np.__version__}",
    "biquadratic": biquadratic.tolist(),
    "hemispherical": hemispherical.tolist(),
    "eigenvalues": eigenvalues[::-1].tolist(),
    "firstVector": (eigenvectors[:, -1] * np.sign(eigenvectors[np.argmax(np.abs(eigenvectors[:, -1])), -1])).tolist(),
    "thinPlate": thin_plate(everyone, (0.1, -0.2)),
    "leftOut": left_out,
    "slope": [float(-vector[0] / vector[2]), float(-vector[1] / vector[2])],
}
path = Path("tests/reference/relight.json")
path.write_text(json.dumps(out, indent=1) + "\n")
print(f"wrote {path}")
