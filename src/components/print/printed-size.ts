/**
 * How large a plate's pictures come on paper: at true size where they fit, else at the largest
 * plain ratio that does.
 */

/** What a page of A4 leaves between the margins of `print.css`, millimetres. */
export const printedArea = { width: 178, height: 226, between: 4 };

/** Width of the pictures where the scale is not known, millimetres: half the page. */
const widthWithoutScale = 86;

/** Tried first, the largest first; after them one half, one third, one fourth ... */
const large = [
  [1, 1],
  [3, 4],
  [2, 3],
] as const;

export interface PrintedSize {
  /** Of one picture, millimetres. */
  readonly width: number;
  readonly height: number;
  /** Size on paper over size of the plate; null where the scale is not known. */
  readonly ratio: readonly [over: number, under: number] | null;
}

/** @param frame Pixels, and pixels to the millimetre. */
export function printedSize(frame: {
  readonly width: number;
  readonly height: number;
  readonly pixelsPerMillimetre: number | null;
}): PrintedSize {
  const { pixelsPerMillimetre: scale } = frame;
  if (scale === null) {
    const width = widthWithoutScale;
    return { width, height: (width * frame.height) / frame.width, ratio: null };
  }
  const [width, height] = [frame.width / scale, frame.height / scale];
  const room = Math.min(printedArea.width / width, printedArea.height / height);
  const ratio = large.find(([over, under]) => over / under <= room) ?? [
    1,
    Math.max(2, Math.ceil(1 / room)),
  ];
  const part = ratio[0] / ratio[1];
  return { width: width * part, height: height * part, ratio };
}

/** A round length on the plate whose bar is some 40 to 60 % of a picture's width, millimetres. */
export function barLength({ width, ratio }: PrintedSize): number | null {
  if (ratio === null) return null;
  const onPlate = (width * ratio[1]) / ratio[0];
  return [500, 200, 100, 50, 20, 10, 5, 2, 1].find((length) => length <= onPlate * 0.6) ?? null;
}
