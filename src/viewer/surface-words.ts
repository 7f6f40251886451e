/** What is said of the pictures themselves. */
const places = ['', 'second ', 'third '];

export const surfaceWords = {
  /** For a screen reader. @param n Which of the pictures beside each other, from 0. */
  name: (title: string, n: number) =>
    `${title}: ${places[n]}picture. Arrow keys move it, plus and minus change its size, 0 shows all of it.`,
  plainTilt:
    'This browser draws without shaders here: Tilt is shown as a plain cross-fade, which is not what light does.',
  plainMode:
    'This browser draws without shaders here, which this way of looking needs; the picture is shown as it is.',
} as const;
