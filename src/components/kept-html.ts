/** HTML about a plate that several pages of one build show, by language. */
import type { PublishedPlate } from './exhibit.ts';

const kept = new WeakMap<PublishedPlate, Map<string, string>>();

/** While pages are written for reading, not while somebody works on their components. */
export async function keptHtml(
  plate: PublishedPlate,
  language: string,
  render: () => Promise<string>,
): Promise<string> {
  if (import.meta.env.DEV) return render();
  const own = kept.get(plate) ?? new Map<string, string>();
  kept.set(plate, own);
  const html = own.get(language) ?? (await render());
  own.set(language, html);
  return html;
}
