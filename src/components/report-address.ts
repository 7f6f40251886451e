/** Where a reader may report something about a plate: the museum's page, or a letter begun. */
import type { PlateRecord } from '../records/plate.ts';
import type { Words } from '../words/words.ts';

/** @param contact E-mail address or page of the museum. */
export function reportAddress(
  contact: string | undefined,
  { title, objectNumber }: Pick<PlateRecord, 'title' | 'objectNumber'>,
  identifier: string,
  words: Words,
): string | undefined {
  if (contact === undefined || contact.includes('://')) return contact;
  const plate = [objectNumber, title].filter((part) => part !== undefined).join(', ');
  const subject = encodeURIComponent(words.plate.reportSubject(plate));
  return `mailto:${contact}?subject=${subject}&body=${encodeURIComponent(`${identifier}\n\n`)}`;
}
