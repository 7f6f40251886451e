/** A state of the viewer as the fragment of a plate's page (DEVELOPERS.md, Addresses). */
import type { Region } from '../records/fields.ts';

export const viewModes = ['look', 'slide', 'beside', 'tilt', 'lamp', 'range'] as const;
export type ViewMode = (typeof viewModes)[number];

export function viewFragment(mode: ViewMode, of: readonly string[], region?: Region): string {
  const parts = [`view=${mode}`];
  if (of.length > 0) parts.push(`of=${of.join(',')}`);
  if (region) parts.push(`xywh=pixel:${region.x},${region.y},${region.width},${region.height}`);
  return `#${parts.join('&')}`;
}
