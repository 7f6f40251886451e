/** One spot in the list: go there, its note, its address, and a way to remove one's own. */
import type { Region } from '../view-state.ts';
import { words } from '../words.ts';

export interface ListedSpot {
  readonly id: string;
  readonly title: string;
  readonly note: string | null;
  /** Languages of title and note where they are not the page's. */
  readonly lang?: string | undefined;
  readonly noteLang?: string | undefined;
  readonly view: string | null;
  readonly region: Region;
  /** The reader's, not the author's. */
  readonly own: boolean;
}

function button(spot: ListedSpot, name: string, what: string): HTMLElement {
  const { x, y, width, height } = spot.region;
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = name;
  made.dataset['do'] = `spots:${what}`;
  made.dataset['spot'] = spot.id;
  made.dataset['region'] = `${x},${y},${width},${height}`;
  return made;
}

/** @param address Opens the spot. */
export function spotRow(spot: ListedSpot, address: string): HTMLElement {
  const item = document.createElement('li');
  const go = button(spot, spot.title, 'go');
  if (spot.lang) go.lang = spot.lang;
  item.append(go);
  if (spot.note) {
    const note = Object.assign(document.createElement('span'), { textContent: spot.note });
    if (spot.noteLang) note.lang = spot.noteLang;
    item.append(note);
  }
  const link = document.createElement('a');
  link.textContent = words.spots.address;
  link.setAttribute('aria-label', words.spots.addressOf(spot.title));
  link.href = address;
  item.append(link);
  if (spot.own) item.append(button(spot, words.spots.remove(spot.title), 'drop'));
  return item;
}
