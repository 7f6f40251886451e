/** The quarter circle of the lamp's height: the plate lies at its foot, the lens is straight above. */

/** In units of its viewBox, 124 by 104. */
export const quarter = { x: 16, y: 88, reach: 72 } as const;

function at(height: number, radius: number): readonly [x: number, y: number] {
  const t = (height * Math.PI) / 180;
  return [quarter.x + Math.cos(t) * radius, quarter.y - Math.sin(t) * radius];
}

const pair = ([x, y]: readonly [number, number]) => `${x.toFixed(1)} ${y.toFixed(1)}`;

/** The whole arc, from the plate's plane to the lens. */
export function quarterArc(): string {
  const { reach } = quarter;
  return `M${pair(at(0, reach))}A${reach} ${reach} 0 0 0 ${pair(at(90, reach))}`;
}

/** Short marks at these heights. */
export function heightMarks(heights: readonly number[]): string {
  const { reach } = quarter;
  return heights.map((h) => `M${pair(at(h, reach - 3))}L${pair(at(h, reach + 3))}`).join('');
}

/** The beam from the lamp down to the plate's middle. */
export function beam(height: number): string {
  return `M${quarter.x} ${quarter.y}L${pair(at(height, quarter.reach - 9))}`;
}

/** The lamp's head: a hood that opens towards the plate. */
export function hood(height: number): string {
  const { reach } = quarter;
  const t = (height * Math.PI) / 180;
  const across = (radius: number, side: number) => {
    const [x, y] = at(height, radius);
    return pair([x - Math.sin(t) * side, y - Math.cos(t) * side]);
  };
  return `M${across(reach - 9, 9)}L${across(reach + 3, 5)}L${across(reach + 12, 5)}L${across(reach + 12, -5)}L${across(reach + 3, -5)}L${across(reach - 9, -9)}z`;
}

/** The height, 0 to 90 degrees, at which a point of the viewBox lies. */
export function heightOf(x: number, y: number): number {
  const t = Math.atan2(quarter.y - y, x - quarter.x);
  return Math.min(90, Math.max(0, (t * 180) / Math.PI));
}
