/**
 * Readings recorded in each other's place. Two captures with opposite tones stay opposite when
 * their words are swapped, so alignment cannot tell; the set-ups can: on a mirror-like plate a
 * lamp from the side before a dark surround gives the positive, a bright field seen in the
 * mirror the negative.
 */
import { about, type InspectedSitting, type Judge } from './inspected-sitting.ts';

export const judgeReadings: Judge = (sitting) => {
  if (!isMirror(sitting)) return [];
  const find = (kind: string, reading: string) =>
    sitting.captures.find((c) => c.setupKind === kind && c.record.reading === reading);
  const lamp = find('normal', 'negative');
  const field = find('axial', 'positive');
  const asUsual = find('normal', 'positive') ?? find('axial', 'negative');
  // One of them alone is told by its tones, once it is aligned.
  if (!lamp || !field || asUsual) return [];
  const [a, b] = [lamp.record.id, field.record.id];
  return [
    about(sitting, null, null, {
      level: 'warning',
      code: 'readings-swapped',
      message: `"${a}", lit from the side, is recorded as negative and "${b}", in the axial field, as positive; on a mirror-like plate it is the other way round.`,
      remedy: 'Look at both and correct the readings, or the set-ups, in sitting.yaml.',
    }),
  ];
};

/** Only a bare metal mirror must turn: an ambrotype's glass and a tintype's lacquer need not. */
function isMirror({ plate }: InspectedSitting): boolean {
  const process = plate?.process;
  return (typeof process === 'object' ? process.name : process) === 'daguerreotype';
}
