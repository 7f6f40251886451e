/**
 * On which page each named place of a PDF lies, so that a list of contents can give page numbers:
 * Chromium knows no way to ask for them while it lays the pages out.
 *
 * Reads what Chromium writes, which is PDF 1.4 with all objects but the streams in the clear. It
 * is no reader of other PDFs.
 *
 * References
 * - ISO 32000-1:2008, 7.7.3 (page tree) and 12.3.2.3 (named destinations).
 */

export interface NamedPages {
  /** How many pages there are. */
  readonly count: number;
  /** Name of a place to its page, the first one being 1. */
  readonly places: Readonly<Record<string, number>>;
}

export function namedPages(pdf: Uint8Array): NamedPages {
  const text = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).toString('latin1');
  const objects = new Map(
    [...text.matchAll(/(?:^|[\r\n])(\d+) 0 obj\s([\s\S]*?)\sendobj/g)].map(([, id, body]) => [
      id,
      // A stream is data, in which anything may stand.
      body.split(/\bstream[\r\n]/)[0],
    ]),
  );
  const body = (id: string | undefined) => objects.get(id ?? '') ?? '';
  const catalog = [...objects.values()].find((one) => /\/Type\s*\/Catalog\b/.test(one)) ?? '';
  const order = new Map<string, number>();
  const visit = (id: string) => {
    const kids = /\/Kids\s*\[([^\]]*)\]/.exec(body(id));
    if (/\/Type\s*\/Pages\b/.test(body(id)) && kids) {
      for (const [, kid] of kids[1].matchAll(/(\d+) 0 R/g)) visit(kid);
    } else order.set(id, order.size + 1);
  };
  visit(/\/Pages (\d+) 0 R/.exec(catalog)?.[1] ?? '');
  const dests = body(/\/Dests (\d+) 0 R/.exec(catalog)?.[1]);
  const places = Object.fromEntries(
    [...dests.matchAll(/\/([^\s/[\]<>()]+)\s*\[\s*(\d+) 0 R/g)].flatMap(([, name, page]) => {
      const number = order.get(page);
      return number === undefined ? [] : [[plainName(name), number] as const];
    }),
  );
  return { count: order.size, places };
}

/** `#20` in a name stands for the byte 0x20. */
function plainName(name: string): string {
  return name.replace(/#([0-9a-fA-F]{2})/g, (_, code: string) =>
    String.fromCharCode(parseInt(code, 16)),
  );
}
