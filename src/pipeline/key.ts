/**
 * The name under which a result is kept: a digest of everything that it depends on. Same
 * parts, same key, in whatever order an object's fields were written.
 */
import { createHash } from 'node:crypto';

export type KeyPart =
  | string
  | number
  | boolean
  | null
  | undefined
  | readonly KeyPart[]
  | { readonly [name: string]: KeyPart };

/** SHA-256, 64 hex digits, of the parts as JSON with sorted field names; `undefined` is left out. */
export function keyOf(parts: KeyPart): string {
  return createHash('sha256').update(canonical(parts)).digest('hex');
}

function canonical(part: KeyPart): string {
  if (Array.isArray(part)) {
    return `[${(part as readonly KeyPart[]).map((p) => canonical(p ?? null)).join(',')}]`;
  }
  if (part !== null && typeof part === 'object') {
    const fields = Object.entries(part as Record<string, KeyPart>)
      .filter(([, value]) => value !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1));
    return `{${fields.map(([name, value]) => `${JSON.stringify(name)}:${canonical(value)}`).join(',')}}`;
  }
  if (typeof part === 'number' && !Number.isFinite(part)) {
    throw new RangeError(`A key cannot hold the number ${part}; pass null where there is none.`);
  }
  return JSON.stringify(part ?? null);
}
