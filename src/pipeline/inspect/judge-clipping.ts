/** Light that was lost: on the image it is a fault, along the plate's edge mostly a nuisance. */
import { limit } from '../../records/tolerances.ts';
import { about, kept, said, type InspectedSitting, type Judge } from './inspected-sitting.ts';

export const judgeClipping: Judge = (sitting) => {
  return sitting.captures.flatMap((capture) => {
    const { measures, record, frames } = capture;
    // Many lights and mosaics are kept frame by frame: there a glint in one frame is expected.
    if (!measures || record.kind === 'lights' || record.kind === 'mosaic') return [];
    const speaking = frames.find((f) => f.name === measures.file);
    const image = 100 * measures.clipping.imageShare;
    const found = judgeImage(sitting, record.id, measures.file, image, record.kind === 'bracket');
    if (found.length > 0) return found;
    const edge = 100 * measures.clipping.edgeShare;
    const edgeLimit = limit(sitting.tolerances, 'clipped-edge');
    if (edge > edgeLimit.value) {
      return [
        about(sitting, record.id, measures.file, {
          level: 'warning',
          code: 'glare-at-edge',
          message: `${said(edge)} % of the band along the plate's edge is clipped; the image itself is not. Expected at most ${edgeLimit.value} %.`,
          remedy:
            'Mask bevel and mat from the lamp with black card beside the plate, or move the lamp.',
          measured: { value: kept(edge), unit: edgeLimit.unit, expected: `≤ ${edgeLimit.value}` },
        }),
      ];
    }
    return measures.outline.ok ? [] : judgeFile(sitting, record.id, speaking);
  });
};

function judgeImage(
  sitting: InspectedSitting,
  id: string,
  file: string,
  percent: number,
  bracket: boolean,
) {
  const most = limit(sitting.tolerances, 'clipped-image');
  if (percent <= most.value) return [];
  const hopeless = percent > limit(sitting.tolerances, 'clipped-image-error').value;
  return [
    about(sitting, id, file, {
      level: hopeless ? 'error' : 'warning',
      code: 'clipped',
      message: `${said(percent)} % of the image is clipped${bracket ? ' even in the shortest exposure' : ''}: what was there is lost. Expected at most ${most.value} %.`,
      remedy: bracket
        ? 'Add a shorter exposure to the bracket.'
        : 'Expose shorter, or move the lamp so that the plate does not mirror it; for deep and bright tones together photograph a bracket.',
      measured: { value: kept(percent), unit: most.unit, expected: `≤ ${most.value}` },
    }),
  ];
}

/** Where the plate was not found, only the file as a whole can be judged. */
function judgeFile(
  sitting: InspectedSitting,
  id: string,
  file: { readonly name: string; readonly clippedShare: number } | undefined,
) {
  const most = limit(sitting.tolerances, 'clipped-file');
  const percent = 100 * (file?.clippedShare ?? 0);
  if (!file || percent <= most.value) return [];
  return [
    about(sitting, id, file.name, {
      level: 'warning',
      code: 'clipped',
      message: `${said(percent)} % of all pixels are clipped. Expected at most ${most.value} %.`,
      remedy: 'Expose shorter, or move the lamp so that the plate does not mirror it.',
      measured: { value: kept(percent), unit: most.unit, expected: `≤ ${most.value}` },
    }),
  ];
}
