/**
 * How deep quotations, lists and directives of a Markdown text lie in one another. A few thousand
 * levels, which nobody writes, keep a parser busy for minutes or exhaust its stack; so they are
 * counted before it is asked. Counts what looks like a marker: rather too many than too few.
 */

/** Far beyond what a text needs. */
export const deepest = 50;

/** The first line that is too deep, from 1; null where none is. */
export function tooDeepLine(text: string): number | null {
  let open = 0;
  for (const [at, line] of text.split('\n').entries()) {
    const fence = /^[\s>]*:{3,}(.*)$/.exec(line);
    if (fence) open = Math.max(0, open + (fence[1].trim() === '' ? -1 : 1));
    const markers = /^(?:[ \t]*(?:>|[-*+](?=\s)|\d{1,9}[.)](?=\s)))*/.exec(line)![0];
    const depth = markers.match(/>|[-*+]|\d+[.)]/g)?.length ?? 0;
    const indent = /^[ \t]*/.exec(line.slice(markers.length))![0].length;
    if (open > deepest || depth > deepest || (depth > 0 && indent > 4 * deepest)) return at + 1;
  }
  return null;
}
