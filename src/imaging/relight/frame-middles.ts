/** Mean and median of the frames of a set at each pixel. */

export function frameMean(frames: readonly Float32Array[]): Float32Array {
  const mean = new Float32Array(frames[0].length);
  for (const frame of frames) {
    for (let at = 0; at < mean.length; at += 1) mean[at] += frame[at] / frames.length;
  }
  return mean;
}

/** What a place looks like without its highlights, which stay in few frames. */
export function frameMedian(frames: readonly Float32Array[]): Float32Array {
  const own = new Float32Array(frames.length);
  return frames[0].map((_, at) => {
    for (let l = 0; l < frames.length; l += 1) own[l] = frames[l][at];
    own.sort();
    return own[own.length >> 1];
  });
}
