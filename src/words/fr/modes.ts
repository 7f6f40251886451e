/** Names of the ways of looking, in French. */
export const modes = {
  look: 'Regarder',
  slide: 'Glisser',
  beside: 'Côte à côte',
  tilt: 'Incliner',
  lamp: 'Lampe',
  range: 'Étendue',
  difference: 'Différence',
};
