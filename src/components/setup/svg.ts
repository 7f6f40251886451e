/**
 * Lines and words of a drawing in millimetres: the `viewBox` is the set-up itself, so that a
 * length measured in the SVG is a length on the table.
 */

export interface Sheet {
  /** Bounds, mm, y down. */
  left: number;
  top: number;
  right: number;
  bottom: number;
  readonly marks: string[];
  readonly labels: { x: number; y: number; text: string; anchor: string; soft: boolean }[];
}

export function emptySheet(): Sheet {
  return { left: 0, top: 0, right: 0, bottom: 0, marks: [], labels: [] };
}

type XY = readonly [x: number, y: number];

const round = (value: number) => Number(value.toFixed(2));

export function escaped(text: string): string {
  const marks: Readonly<Record<string, string>> = {
    '&': '&amp;',
    '<': '&lt;',
    '>': '&gt;',
    '"': '&quot;',
  };
  return text.replace(/[&<>"]/g, (mark) => marks[mark]);
}

function reach(sheet: Sheet, [x, y]: XY): void {
  sheet.left = Math.min(sheet.left, x);
  sheet.right = Math.max(sheet.right, x);
  sheet.top = Math.min(sheet.top, y);
  sheet.bottom = Math.max(sheet.bottom, y);
}

/** A line through points. `kind` is a class; `part` names it for who measures the drawing. */
export function line(sheet: Sheet, kind: string, points: readonly XY[], part?: string): void {
  for (const point of points) reach(sheet, point);
  const path = points.map(([x, y]) => `${round(x)} ${round(y)}`).join('L');
  const name = part === undefined ? '' : ` data-part="${part}"`;
  sheet.marks.push(`<path class="${kind}"${name} d="M${path}"/>`);
}

/** A line of a length across a direction, through a point. */
export function across(
  sheet: Sheet,
  kind: string,
  at: XY,
  towards: XY,
  length: number,
  part?: string,
) {
  const size = Math.hypot(...towards) || 1;
  const [dx, dy] = [(-towards[1] / size) * (length / 2), (towards[0] / size) * (length / 2)];
  const ends = [
    [at[0] - dx, at[1] - dy],
    [at[0] + dx, at[1] + dy],
  ] as const;
  line(sheet, kind, ends, part);
}

export function box(
  sheet: Sheet,
  kind: string,
  at: XY,
  width: number,
  height: number,
  part?: string,
) {
  reach(sheet, [at[0] - width / 2, at[1] - height / 2]);
  reach(sheet, [at[0] + width / 2, at[1] + height / 2]);
  const name = part === undefined ? '' : ` data-part="${part}"`;
  sheet.marks.push(
    `<rect class="${kind}"${name} x="${round(at[0] - width / 2)}" y="${round(at[1] - height / 2)}" width="${round(width)}" height="${round(height)}"/>`,
  );
}

/** An arc round the origin between two directions, degrees as a protractor on paper has them. */
export function arc(sheet: Sheet, kind: string, radius: number, from: number, to: number): void {
  const point = (degrees: number): XY => {
    const t = (degrees * Math.PI) / 180;
    return [radius * Math.cos(t), -radius * Math.sin(t)];
  };
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  const sweep = to > from ? 0 : 1;
  const [a, b] = [point(from), point(to)];
  sheet.marks.push(
    `<path class="${kind}" d="M${round(a[0])} ${round(a[1])}A${round(radius)} ${round(radius)} 0 ${large} ${sweep} ${round(b[0])} ${round(b[1])}"/>`,
  );
}

export function label(sheet: Sheet, at: XY, text: string, anchor = 'middle', soft = false): void {
  reach(sheet, at);
  sheet.labels.push({ x: at[0], y: at[1], text, anchor, soft });
}

/** Width of a letter against its height, for the room that words need. */
const letter = 0.52;

/**
 * The drawing as an `svg` element. Letters are a fixed part of the drawing's width, so that all
 * drawings of a page read alike; lines keep their width at any size.
 *
 * @param title What it shows, in words.
 */
export function svgOf(sheet: Sheet, title: string, lettersAcross = 46): string {
  const bare = Math.max(sheet.right - sheet.left, 0.8 * (sheet.bottom - sheet.top), 1);
  const size = bare / (lettersAcross * letter - 4);
  for (const { x, text, anchor } of sheet.labels) {
    const width = text.length * letter * size;
    const start = anchor === 'middle' ? x - width / 2 : anchor === 'end' ? x - width : x;
    sheet.left = Math.min(sheet.left, start);
    sheet.right = Math.max(sheet.right, start + width);
  }
  const pad = size;
  const [left, top] = [sheet.left - pad, sheet.top - 1.4 * pad];
  const [width, height] = [sheet.right + pad - left, sheet.bottom + 1.2 * pad - top];
  const words = sheet.labels.map(
    ({ x, y, text, anchor, soft }) =>
      `<text${soft ? ' class="soft"' : ''} x="${round(x)}" y="${round(y)}" text-anchor="${anchor}">${escaped(text)}</text>`,
  );
  return (
    `<svg class="setup-svg" viewBox="${round(left)} ${round(top)} ${round(width)} ${round(height)}" role="img" aria-label="${escaped(title)}" font-size="${round(size)}">` +
    sheet.marks.join('') +
    words.join('') +
    '</svg>'
  );
}

/** Height of a letter that {@link svgOf} will use, about: for the room between words and lines. */
export function letterSize(extent: number, lettersAcross = 46): number {
  return extent / (lettersAcross * letter - 4);
}

/** A ruler with its length, a round number about a quarter of the drawing. */
export function ruler(sheet: Sheet, words: (millimetres: number) => string): void {
  const extent = sheet.right - sheet.left;
  const length =
    [1000, 500, 200, 100, 50, 20, 10].find((candidate) => candidate <= extent / 3) ?? 10;
  const size = letterSize(Math.max(extent, 0.8 * (sheet.bottom - sheet.top)));
  const y = sheet.bottom + 2.2 * size;
  const x = sheet.left;
  line(
    sheet,
    'rule',
    [
      [x, y - size / 3],
      [x, y],
      [x + length, y],
      [x + length, y - size / 3],
    ],
    'ruler',
  );
  label(sheet, [x + length + size / 2, y + size / 4], words(length), 'start', true);
}
