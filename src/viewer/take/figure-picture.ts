/** A figure: the picture with a strip below it that holds the scale bar and the words. */
import { scaleBar } from '../scale-bar.ts';
import { words as phrases } from '../words.ts';

export interface FigureWords {
  /** Sentences below the picture, each on lines of its own. */
  readonly lines: readonly string[];
  /** Pixels of this picture for one millimetre of the plate; null where not known. */
  readonly perMillimetre: number | null;
}

/** Break a sentence into lines that fit. */
export function brokenLines(
  text: string,
  width: number,
  measure: (words: string) => number,
): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).flatMap((part) => fittingParts(part, width, measure))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && measure(longer) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === '' ? lines : [...lines, line];
}

/** A word that is longer than a line, such as an address, in parts that are not. */
function fittingParts(
  word: string,
  width: number,
  measure: (words: string) => number,
): readonly string[] {
  const parts: string[] = [];
  let rest = word;
  while (rest.length > 1 && measure(rest) > width) {
    let count = rest.length - 1;
    while (count > 1 && measure(rest.slice(0, count)) > width) count--;
    parts.push(rest.slice(0, count));
    rest = rest.slice(count);
  }
  return [...parts, rest];
}

/** @param picture The region as it is shown. @param mirrored Turn it left for right. */
export function figurePicture(
  picture: OffscreenCanvas,
  words: FigureWords,
  mirrored: boolean,
): OffscreenCanvas {
  // Narrow regions still need room for words.
  const width = Math.max(picture.width, 640);
  const size = Math.max(15, Math.round(width / 56));
  const font = `${size}px "Instrument Sans Variable", "Instrument Sans", sans-serif`;
  const probe = new OffscreenCanvas(1, 1).getContext('2d');
  if (probe === null) throw new Error(phrases.faults.noDrawing);
  probe.font = font;
  const margin = size;
  const lines = words.lines.flatMap((line) =>
    brokenLines(line, width - 2 * margin, (text) => probe.measureText(text).width),
  );
  const bar = scaleBar(words.perMillimetre, width / 3);
  const barHeight = bar === null ? 0 : 2.4 * size;
  const height = picture.height + margin + barHeight + lines.length * 1.4 * size + margin;
  const canvas = new OffscreenCanvas(width, Math.ceil(height));
  const context = canvas.getContext('2d');
  if (context === null) throw new Error(phrases.faults.noDrawing);
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.save();
  if (mirrored) {
    context.translate(picture.width, 0);
    context.scale(-1, 1);
  }
  context.drawImage(picture, 0, 0);
  context.restore();
  context.fillStyle = '#111';
  context.font = font;
  context.textBaseline = 'top';
  let y = picture.height + margin;
  if (bar !== null) {
    const thick = Math.max(2, Math.round(size / 8));
    context.fillRect(margin, y + size / 2, bar.pixels, thick);
    context.fillRect(margin, y, thick, size);
    context.fillRect(margin + bar.pixels - thick, y, thick, size);
    context.fillText(bar.label, margin + bar.pixels + size / 2, y);
    y += barHeight;
  }
  for (const line of lines) {
    context.fillText(line, margin, y);
    y += 1.4 * size;
  }
  return canvas;
}
