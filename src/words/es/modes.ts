/** Names of the ways of looking, in Spanish. */
export const modes = {
  look: 'Mirar',
  slide: 'Deslizar',
  beside: 'Al lado',
  tilt: 'Inclinar',
  lamp: 'Lámpara',
  range: 'Gama',
  difference: 'Diferencia',
};
