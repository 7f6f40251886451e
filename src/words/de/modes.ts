/** Names of the ways of looking, in German. */
export const modes = {
  look: 'Ansehen',
  slide: 'Schieben',
  beside: 'Daneben',
  tilt: 'Kippen',
  lamp: 'Lampe',
  range: 'Umfang',
  difference: 'Unterschied',
};
