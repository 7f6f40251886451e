"""Reference values for tests/imaging/registration and tests/imaging/fft.test.ts.

Run from the project's root with Debian's Python (python3-numpy, python3-opencv):

    /usr/bin/python3 scripts/reference/registration.py

Writes tests/reference/registration.json. Inputs are small closed formulas, repeated in the tests.
"""

import json
from pathlib import Path

import cv2
import numpy as np

rows, columns = np.mgrid[0:8, 0:8]
field = np.sin(1.3 * columns + 0.4 * rows) + 1j * np.cos(0.7 * rows - 0.2 * columns * columns)
spectrum = np.fft.fft2(field)

rows, columns = np.mgrid[0:24, 0:32]
picture = (np.sin(0.5 * columns) * np.cos(0.3 * rows) + 0.02 * columns).astype(np.float32)


def smoothed(sigma):
    side = 2 * int(np.ceil(3 * sigma)) + 1
    kernel = cv2.getGaussianKernel(side, sigma, cv2.CV_64F)
    return cv2.sepFilter2D(picture, cv2.CV_32F, kernel, kernel, borderType=cv2.BORDER_REPLICATE)


codes = np.round(20000 + 15000 * np.sin(0.9 * columns + 0.5 * rows)).astype(np.uint16)
homography = np.array([[0.97, 0.06, 3.1], [-0.05, 1.02, -2.4], [1e-4, -5e-5, 1.0]])
linear = cv2.warpPerspective(
    picture, homography, (32, 24), flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP
)

here = np.array([[12, 7], [310, 20], [295, 240], [5, 225], [150, 118], [80, 200]], dtype=np.float64)
there = np.array(
    [[20.4, 3.1], [318.9, 30.2], [290.3, 251.7], [1.2, 220.5], [154.2, 121.9], [77.1, 203.3]]
)
exact, _ = cv2.findHomography(here[:4], there[:4], 0)

matrix = np.array([[0.0, 2.0, -1.0, 4.0], [3.0, 1.0, 7.0, 2.0], [1.0, -5.0, 2.0, 8.0], [6.0, 2.0, 9.0, 1.0]])
right = np.array([3.0, -1.0, 4.0, 1.5])

values = {
    "made": f"NumPy {np.__version__}, OpenCV {cv2.__version__}",
    "fft8": {"re": spectrum.real.ravel().tolist(), "im": spectrum.imag.ravel().tolist()},
    "gaussian": {"1": smoothed(1.0).ravel().tolist(), "1.5": smoothed(1.5).ravel().tolist()},
    "areaThree": cv2.resize(codes.astype(np.float64)[:24, :30], (10, 8), interpolation=cv2.INTER_AREA).ravel().tolist(),
    "areaOneAndHalf": cv2.resize(codes.astype(np.float64)[:24, :30], (20, 16), interpolation=cv2.INTER_AREA).ravel().tolist(),
    "warp": linear.ravel().tolist(),
    "inverse": (np.linalg.inv(homography) / np.linalg.inv(homography)[2, 2]).ravel().tolist(),
    "fourPoints": exact.ravel().tolist(),
    "solution": np.linalg.solve(matrix, right).tolist(),
}


def rounded(value):
    if isinstance(value, dict):
        return {k: rounded(v) for k, v in value.items()}
    if isinstance(value, list):
        return [rounded(v) for v in value]
    return value if isinstance(value, str) else float(f"{value:.9g}")


target = Path("tests/reference/registration.json")
target.parent.mkdir(parents=True, exist_ok=True)
target.write_text(json.dumps(rounded(values)) + "\n")
print(f"wrote {target} with {values['made']}")
