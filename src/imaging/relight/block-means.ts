/** A picture shrunk by whole blocks; columns and rows left over at the end are dropped. */
export function blockMeans(data: Float32Array, width: number, step: number): Float32Array {
  const columns = Math.floor(width / step);
  const rows = Math.floor(data.length / width / step);
  const out = new Float32Array(columns * rows);
  for (let y = 0; y < rows * step; y += 1) {
    for (let x = 0; x < columns * step; x += 1) {
      const at = Math.floor(y / step) * columns + Math.floor(x / step);
      out[at] += data[y * width + x] / (step * step);
    }
  }
  return out;
}
