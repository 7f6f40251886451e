"""OpenCV's ECC and scikit-image's phase correlation on pairs that align/export.ts wrote.

Usage: /usr/bin/python3 beside.py FOLDER. Reads pair-N.json with base and moving planes beside it
(16-bit linear), prints a JSON array: mean corner error in pixels and CPU seconds of each method.

ECC (Evangelidis and Psarakis 2008, doi:10.1109/TPAMI.2008.113) gets a start 2 px from the truth
and gradient magnitudes, on which it does better than on a negated picture; one thread. Phase
correlation knows only shifts: it gets gradient magnitudes with lay, turn, size and perspective
already taken out by the truth, so that only a shift is left to find.
"""

import json
import sys
import time
from pathlib import Path

import cv2
import numpy as np
from skimage.registration import phase_cross_correlation

cv2.setNumThreads(1)
folder = Path(sys.argv[1])


def corner_error(found, truth, width, height):
    """Both take base pixels to moving ones; compared in the base, as our own error is."""
    corners = np.float64([[0, 0], [width - 1, 0], [width - 1, height - 1], [0, height - 1]])
    back = cv2.perspectiveTransform(corners[None], np.linalg.inv(found))[0]
    true = cv2.perspectiveTransform(corners[None], np.linalg.inv(truth))[0]
    return float(np.hypot(*(back - true).T).mean())


def edges(plane):
    log = cv2.GaussianBlur(np.log(0.02 + plane.astype(np.float32) / 65535), (0, 0), 1)
    return np.hypot(cv2.Sobel(log, cv2.CV_32F, 1, 0), cv2.Sobel(log, cv2.CV_32F, 0, 1))


results = []
for description in sorted(folder.glob("pair-*.json")):
    pair = json.loads(description.read_text())
    width, height = pair["width"], pair["height"]
    base, moving = (
        np.fromfile(folder / pair[side], np.uint16).reshape(height, width)
        for side in ("base", "moving")
    )
    to_moving = np.linalg.inv(np.array(pair["truth"]).reshape(3, 3))
    to_moving /= to_moving[2, 2]
    start = np.array([[1, 0, 1.6], [0, 1, -1.2], [0, 0, 1]]) @ to_moving

    began = time.process_time()
    try:
        criteria = (cv2.TERM_CRITERIA_COUNT | cv2.TERM_CRITERIA_EPS, 100, 1e-6)
        _, found = cv2.findTransformECC(
            edges(base), edges(moving), (start / start[2, 2]).astype(np.float32),
            cv2.MOTION_HOMOGRAPHY, criteria, None, 5,
        )
        ecc = corner_error(found.astype(np.float64), to_moving, width, height)
    except cv2.error:
        ecc = None
    ecc_cpu = time.process_time() - began

    began = time.process_time()
    drawn = cv2.warpPerspective(
        moving, start, (width, height), flags=cv2.INTER_CUBIC | cv2.WARP_INVERSE_MAP
    )
    shift = phase_cross_correlation(edges(base), edges(drawn), upsample_factor=50)[0]
    moved = start @ np.array([[1, 0, -shift[1]], [0, 1, -shift[0]], [0, 0, 1]])
    phase = corner_error(moved, to_moving, width, height)
    results.append({
        "index": pair["index"], "ecc": ecc, "eccCpu": ecc_cpu,
        "phase": phase, "phaseCpu": time.process_time() - began,
    })

print(json.dumps(results))
