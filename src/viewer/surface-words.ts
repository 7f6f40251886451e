/** What is said of the pictures themselves. */
const places = ['', 'second ', 'third '];

export const surfaceWords = {
  /** For a screen reader. @param n Which of the pictures beside each other, from 0. */
  name: (title: string, n: number) =>
    `${title}: ${places[n]}picture. Arrow keys move it, plus and minus change its size, 0 shows all of it.`,
  plainTilt:
    'This browser draws without shaders here: Tilt is shown as a plain cross-fade, which is not what light does.',
  plainStills:
    'This browser cannot mix the two readings itself: Tilt goes by steps that were mixed beforehand, in linear light.',
  /** @param reading Null where it cannot be told. */
  still: (tilt: number, reading: string | null, n: number, count: number) =>
    `${tilt.toFixed(1)}°${reading === null ? '' : `, ${reading}`} (step ${n + 1} of ${count})`,
  tiltCaption: (tilt: number) =>
    `Positive and negative added in linear light, tilted by ${tilt.toFixed(1)}°`,
  stillCaption: (tilt: number) =>
    `Positive and negative added beforehand, tilted by ${tilt.toFixed(1)}°`,
  fadeCaption: 'Positive and negative in a plain cross-fade',
  stillsTitle: 'Between the two readings',
  stillAlt: (title: string, tilt: number) => `${title}, tilted by ${tilt.toFixed(1)}°`,
  waiting:
    'Waiting for parts of the picture: the connection is slow. What is here already can be moved and turned.',
  plainMode:
    'This browser draws without shaders here, which this way of looking needs; the picture is shown as it is.',
} as const;
