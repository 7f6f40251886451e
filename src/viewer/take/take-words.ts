/** The sentences of Take away. */
export const takeWords = {
  making: 'Putting the picture together …',
  failed: 'The picture could not be made.',
  nothing: 'Nothing is in sight to be taken away.',
  rights: (rights: string) => `Rights: ${rights}`,
  full: (width: number, height: number) => `Made at full resolution, ${width} by ${height} pixels.`,
  smaller: (factor: number, width: number, height: number) =>
    `Made at 1/${factor} of the full resolution, ${width} by ${height} pixels: all of it would be too large for a browser.`,
  firstOnly: 'Only the first picture was taken.',
} as const;
