import { parseFragment } from 'parse5';
import { describe, expect, test } from 'vitest';
import { gridSvg, inkOf, mapScales } from '../../../src/components/maps/grid-svg.ts';

interface Node {
  readonly nodeName: string;
  readonly attrs?: readonly { readonly name: string; readonly value: string }[];
  readonly childNodes?: readonly Node[];
}

/** The drawing as a parser of somebody else reads it. */
function drawn(values: (number | null)[], more: object = {}) {
  const text = gridSvg({
    kind: 'clipping',
    columns: 2,
    rows: 2,
    values,
    aspect: 1.5,
    label: 'Clipped <parts> & "glare"',
    ...more,
  });
  const [svg] = parseFragment(text).childNodes as unknown as Node[];
  const attributes = Object.fromEntries((svg.attrs ?? []).map((a) => [a.name, a.value]));
  return { attributes, children: svg.childNodes ?? [] };
}

describe('gridSvg', () => {
  test('has the shape of the picture and a label that no mark-up escapes from', () => {
    const { attributes } = drawn([0, 0, 0, 0]);
    expect(attributes['viewBox']).toBe('0 0 120 80');
    expect(attributes['aria-label']).toBe('Clipped <parts> & "glare"');
  });

  test('draws nothing for nothing, ink for something, a stroke for the unknown', () => {
    const { children } = drawn([0, 25, null, 12.5]);
    expect(children).toHaveLength(3);
    const opacity = children.map((c) => c.attrs?.find((a) => a.name === 'fill-opacity')?.value);
    expect(opacity).toEqual(['1', undefined, '0.5']);
  });

  test('adds the plate’s outline and a circle for each mark', () => {
    const outline = [
      [0.1, 0.1],
      [0.9, 0.1],
      [0.9, 0.9],
      [0.1, 0.9],
    ];
    const { children } = drawn([0, 0, 0, 0], { outline, marks: [{ across: 0.5, down: 0.25 }] });
    expect(children.map((c) => c.nodeName)).toEqual(['path', 'circle']);
    const d = children[0].attrs?.find((a) => a.name === 'd')?.value;
    expect(d).toBe('M12 8L108 8L108 72L12 72Z');
  });

  test('keeps one scale for all maps of a kind, and stays within it', () => {
    expect(inkOf('evenness', 100)).toBe(0.5);
    expect(inkOf('evenness', 40)).toBe(1);
    expect(inkOf('residual', 0.25)).toBe(0.5);
    for (const kind of Object.keys(mapScales) as (keyof typeof mapScales)[]) {
      expect(inkOf(kind, mapScales[kind].pale)).toBe(0);
      expect(inkOf(kind, mapScales[kind].dark)).toBe(1);
    }
  });
});
