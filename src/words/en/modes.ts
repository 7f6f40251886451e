/** Names of the ways of looking, in English. */
export const modes = {
  look: 'Look',
  slide: 'Slide',
  beside: 'Beside',
  tilt: 'Tilt',
  lamp: 'Lamp',
  range: 'Range',
  difference: 'Difference',
};
