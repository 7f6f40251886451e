/** EDTF dates. */
const year = /^\d{4}$/;
export function parseEdtf(text: string): { text: string } | null {
  return year.test(text.slice(0, 4)) || text.startsWith('..') ? { text } : null;
}
