"""Time NumPy lstsq on 48 lamps: sixteen coefficients for each pixel of one channel.

Prints processor seconds for a million pixels.
"""

import os
import time

os.environ["OPENBLAS_NUM_THREADS"] = "1"
import numpy as np  # noqa: E402

lamps, terms, pixels = 48, 16, 200_000
random = np.random.default_rng(1)
design = random.standard_normal((lamps, terms))
values = random.integers(0, 256, (lamps, pixels)).astype(np.float64)
start = time.process_time()
np.linalg.lstsq(design, values, rcond=None)
print((time.process_time() - start) * 1e6 / pixels)
