/**
 * A coarse map as a small drawing: one square of ink per field, darker for more. The scale of
 * each kind is fixed, so that the maps of two captures can be compared by eye; a map stretched
 * to its own range would show an even light as uneven.
 */

export interface GridDrawing {
  readonly kind: MapKind;
  readonly columns: number;
  readonly rows: number;
  /** Row-major; null where nothing could be measured. */
  readonly values: readonly (number | null)[];
  /** Width over height of the picture that the map lies over. */
  readonly aspect: number;
  /** Corners of the plate, 0 to 1, clockwise from the top left. */
  readonly outline?: readonly (readonly [number, number])[] | null;
  /** Places worth a look, 0 to 1. */
  readonly marks?: readonly { readonly across: number; readonly down: number }[];
  /** What the drawing shows, for who cannot see it. */
  readonly label: string;
}

export type MapKind = 'evenness' | 'clipping' | 'residual' | 'turning';

/** What white paper and full ink stand for, in the map's unit. */
export const mapScales: Readonly<
  Record<MapKind, { readonly pale: number; readonly dark: number }>
> = {
  // Per cent of the median: dark where little light fell.
  evenness: { pale: 150, dark: 50 },
  // Per cent of the field that is clipped.
  clipping: { pale: 0, dark: 25 },
  // Pixels of the base.
  residual: { pale: 0, dark: 0.5 },
  // Times the plate's own turning point.
  turning: { pale: 0.5, dark: 2 },
};

/** Width of the drawing in its own units. */
const width = 120;

/** An `svg` element; colours come from `currentColor`, so that it works in both themes. */
export function gridSvg(drawing: GridDrawing): string {
  const { columns, rows, aspect, label } = drawing;
  const height = round(width / aspect);
  const [w, h] = [width / columns, height / rows];
  const fields = drawing.values.map((value, i) => {
    const [x, y] = [round((i % columns) * w), round(Math.floor(i / columns) * h)];
    const box = `M${x} ${y}h${round(w)}v${round(h)}h${-round(w)}z`;
    // A stroke of a field that nobody knows: neither pale nor dark.
    if (value === null)
      return `<path d="M${x} ${round(y + h)}l${round(w)} ${-round(h)}" stroke="currentColor" stroke-opacity="0.4" stroke-width="0.5"/>`;
    const ink = inkOf(drawing.kind, value);
    return ink === 0 ? '' : `<path d="${box}" fill-opacity="${ink}" shape-rendering="crispEdges"/>`;
  });
  return (
    `<svg viewBox="0 0 ${width} ${height}" role="img" aria-label="${escaped(label)}" fill="currentColor">` +
    fields.join('') +
    outlinePath(drawing.outline ?? null, height) +
    (drawing.marks ?? []).map((mark) => markCircle(mark, height)).join('') +
    '</svg>'
  );
}

/** Strength of the ink, 0 to 1 in steps of a hundredth. */
export function inkOf(kind: MapKind, value: number): number {
  const { pale, dark } = mapScales[kind];
  const share = (value - pale) / (dark - pale);
  return Math.round(100 * Math.min(1, Math.max(0, share))) / 100;
}

function outlinePath(outline: GridDrawing['outline'], height: number): string {
  if (!outline) return '';
  const points = outline.map(([x, y]) => `${round(x * width)} ${round(y * height)}`);
  return `<path d="M${points.join('L')}Z" fill="none" stroke="currentColor" stroke-width="0.7"/>`;
}

function markCircle(mark: { readonly across: number; readonly down: number }, height: number) {
  const [x, y] = [round(mark.across * width), round(mark.down * height)];
  return `<circle cx="${x}" cy="${y}" r="4" fill="none" stroke="currentColor"/>`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

function escaped(text: string): string {
  const marks: Readonly<Record<string, string>> = {
    '&': '&amp;',
    '<': '&lt;',
    '>': '&gt;',
    '"': '&quot;',
  };
  return text.replace(/[&<>"]/g, (mark) => marks[mark]);
}
