/** What the pages say of the picture of what raking adds. */
export const rakingWords = {
  step: 'taking what raking light adds',
  made: (bearings: number): string =>
    `Derived from ${bearings} raking captures, made equally bright: at each point the brightest of them less the part that all share. ` +
    'What every bearing shows alike, the picture on the plate, falls away; what answers to the lamp remains.',
  caution:
    'Not a map of damage: scratches, dust, polishing lines and the edges of tarnish look alike here, and what runs towards every lamp is missing. Compare with the captures.',
  median: 'Light that raking adds, in the middle',
  high: 'Light that raking adds, brightest hundredth',
};
