/** What Measure asks for next. */
export type MeasureKind = 'length' | 'angle' | 'area' | 'profile';

const begin: Readonly<Record<MeasureKind, string>> = {
  length: 'Press the picture at both ends of what you want to measure.',
  angle: 'Press one end, the corner, and the other end.',
  area: 'Press the corners one after the other, then “Close the outline”.',
  profile: 'Press both ends of the line along which the luminance is wanted.',
};

export function beginWords(kind: MeasureKind, scaleKnown: boolean): string {
  const unknown =
    scaleKnown || kind === 'angle'
      ? ''
      : ' The scale of this picture is not known: lengths are given in pixels.';
  return `${begin[kind]}${unknown}`;
}

export function nextWords(kind: MeasureKind, set: number): string {
  if (kind === 'area')
    return `${set} ${set === 1 ? 'corner is' : 'corners are'} set. Press the next one${set > 2 ? ', or close the outline' : ''}.`;
  if (kind === 'angle')
    return set === 1 ? 'One end is set. Press the corner.' : 'Press the other end.';
  return 'One end is set. Press at the other end.';
}
