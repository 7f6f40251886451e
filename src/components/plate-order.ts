/**
 * Orders of the index. Each is a page of its own, so that what is read first is also what comes
 * first in the document, with or without script.
 */
import type { PublishedPlate } from './exhibit.ts';
import type { Addresses } from './addresses.ts';
import { sizeOf } from '../records/plate-sizes.ts';

export const otherOrders = ['title', 'number', 'size'] as const;
export type OtherOrder = (typeof otherOrders)[number];
export type PlateOrder = 'date' | OtherOrder;

export const plateOrders: readonly PlateOrder[] = ['date', ...otherOrders];

export const orderAddress = (order: PlateOrder, { home, platesIndex }: Addresses): string =>
  order === 'date' ? platesIndex : `${home}plates-by/${order}/`;

/** Plates in another order than the catalogue's; what has no value stands last. */
export function inOrder(
  plates: readonly PublishedPlate[],
  order: PlateOrder,
  language: string,
): readonly PublishedPlate[] {
  if (order === 'date') return plates;
  const natural = new Intl.Collator(language, { numeric: true });
  const key = {
    title: ({ record }: PublishedPlate) => record.title.replace(/^["“”‘’'«»¿¡\s]+/, ''),
    number: ({ record }: PublishedPlate) => record.objectNumber,
    size: ({ record }: PublishedPlate) => {
      const sides = sizeOf(record.size);
      return sides === null ? undefined : String(sides[0] * sides[1]);
    },
  }[order];
  return [...plates].sort((a, b) => {
    const [first, second] = [key(a), key(b)];
    if (first === undefined || second === undefined) {
      return Number(first === undefined) - Number(second === undefined);
    }
    return natural.compare(first, second);
  });
}
