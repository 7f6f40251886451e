/** What the page and the processing record say of a merged bracket. */
import type { Figure, Setting } from '../../records/result.ts';
import { renderingKey } from './bracket-folder.ts';
import type { MergeRecord, NamedBracket } from './bracket-record.ts';
import type { PlannedView } from './part.ts';

type Told = Pick<PlannedView, 'id' | 'kind' | 'made' | 'caution' | 'step' | 'settings' | 'figures'>;

const caution =
  'A rendering for the eye: its tones are compressed, and must not be measured or compared with ' +
  'another plate’s. The merged light is in the archive file.';

/** The view with one curve, over which the gain layer lies. */
export function mergedView(bracket: NamedBracket, merge: MergeRecord): Told {
  return {
    id: bracket.id,
    kind: 'merge',
    made: `${howMerged(bracket, merge)} Shown as a rendering with one curve for the whole picture.`,
    caution,
    step: 'merging a bracket of exposures and rendering it with one curve',
    settings: [
      ...mergeSettings(merge),
      { name: 'rendering', value: 'global, photographic (Reinhard et al. 2002)' },
      { name: 'middle grey of the rendering', value: renderingKey },
      { name: 'light shown as white', value: rounded(merge.brightest) },
    ],
    figures: figuresOf(merge),
  };
}

/** The view that keeps fine detail. */
export function renderedLocally(bracket: NamedBracket, merge: MergeRecord): Told {
  return {
    id: `${bracket.id}-local`,
    kind: 'merge',
    made: `${howMerged(bracket, merge)} Shown as a local rendering: what changes slowly over the plate is compressed, fine detail is kept.`,
    caution: `${caution} Light and dark are only comparable within a small neighbourhood.`,
    step: 'rendering a merged bracket with compressed base and kept detail',
    settings: [
      ...mergeSettings(merge),
      {
        name: 'rendering',
        value: 'local, base and detail by guided filter (He, Sun and Tang 2013)',
      },
      { name: 'compression of the base', value: rounded(merge.compression) },
    ],
    figures: figuresOf(merge),
  };
}

function howMerged({ files, placed }: NamedBracket, merge: MergeRecord): string {
  const moved = merge.frames.filter((f) => f.resampled).length;
  const curve = {
    profile: 'in linear light by the files’ profile',
    recovered: 'after the camera’s response was recovered from the frames themselves',
    'assumed sRGB': 'with the sRGB curve assumed, for the files carry no profile',
  }[merge.curveFrom];
  return (
    `${files.length} exposures merged ${curve}, each weighed by its predicted noise` +
    (moved > 0 ? `; ${moved} of them had moved and were shifted` : '') +
    (placed ? ', laid into the frame of the base.' : '.')
  );
}

function mergeSettings({ frames, noise, noiseFrom, curveFrom }: MergeRecord): Setting[] {
  return [
    { name: 'weights', value: 'inverse variance, predicted from a first estimate' },
    { name: 'signal that counts as clipped', value: frames[0].clip },
    { name: 'curve of the files', value: curveFrom },
    { name: 'noise of the camera', value: noiseFrom },
    { name: 'variance per unit of signal', value: rounded(noise.gain) },
    { name: 'standard deviation in the dark', value: rounded(Math.sqrt(noise.darkVariance)) },
    { name: 'seconds as marked', value: frames.map((f) => rounded(f.marked)).join(', ') },
    { name: 'seconds as measured', value: frames.map((f) => rounded(f.seconds)).join(', ') },
  ];
}

function figuresOf(merge: MergeRecord): Figure[] {
  const steps = merge.steps.flatMap(({ marked, measured }) =>
    measured === null ? [] : [100 * Math.abs(measured / marked - 1)],
  );
  const shifts = merge.frames.flatMap(({ shift }) =>
    shift ? [Math.hypot(shift.dx, shift.dy)] : [],
  );
  const figure = (quantity: string, label: string, value: number, unit: string): Figure => ({
    ...{ quantity, label, value: rounded(value), unit },
  });
  return [
    figure(
      'held-range',
      'Range held between noise and clipping',
      Math.log2(merge.ceiling / merge.floor),
      'stops',
    ),
    figure(
      'used-range',
      'Range of the plate, darkest to brightest thousandth',
      Math.log2(merge.brightest / Math.max(merge.floor, merge.darkest)),
      'stops',
    ),
    figure('clipped-everywhere', 'Clipped in every frame', 100 * merge.clippedEverywhere, '%'),
    figure('below-noise', 'Below the noise in every frame', 100 * merge.belowNoise, '%'),
    ...(steps.length > 0
      ? [figure('exposure-error', 'Largest error of a marked step', Math.max(...steps), '%')]
      : []),
    ...(shifts.length > 0
      ? [figure('frame-shift', 'Largest shift between frames', Math.max(...shifts), 'px')]
      : []),
  ];
}

/** Four significant digits: what the measurement can bear. */
function rounded(value: number): number {
  return Number(value.toPrecision(4));
}
