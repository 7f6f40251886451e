/** Where a lamp stands, in words. */
const sides = [
  'above',
  'the upper right',
  'the right',
  'the lower right',
  'below',
  'the lower left',
  'the left',
  'the upper left',
];

/** "from the upper left"; bearings are clockwise from the plate's top edge. */
export function fromWhere(bearing: number): string {
  return `from ${sides[Math.round(bearing / 45) % 8]}`;
}

/** "bearing 293°, 26° above the plate" */
export function lampWords(bearing: number, height: number): string {
  return `bearing ${Math.round(bearing) % 360}°, ${Math.round(height)}° above the plate`;
}
