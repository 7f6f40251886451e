"""OpenCV's calibration and merge of the same frames, with its CPU seconds.

Arguments: a folder with frame-<k>.raw (8-bit RGB), and shape.json {width, height, seconds}.
Writes merged.raw (32-bit float RGB). Prints {"calibrate": s, "merge": s}.
"""

import json
import sys
import time

import cv2
import numpy as np

cv2.setNumThreads(1)
folder = sys.argv[1]
with open(f"{folder}/shape.json") as file:
    shape = json.load(file)
size = (shape["height"], shape["width"], 3)
times = np.array(shape["seconds"], np.float32)
frames = [
    np.fromfile(f"{folder}/frame-{k}.raw", np.uint8).reshape(size) for k in range(len(times))
]
start = time.process_time()
# 70 samples is the default; 300 was the better of the two in trials.
response = cv2.createCalibrateDebevec(samples=shape["samples"]).process(frames, times)
middle = time.process_time()
merged = cv2.createMergeDebevec().process(frames, times, response)
end = time.process_time()
merged.tofile(f"{folder}/merged.raw")
print(json.dumps({"calibrate": middle - start, "merge": end - middle}))
