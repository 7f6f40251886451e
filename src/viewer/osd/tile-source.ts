/**
 * The description of a picture's tiles. A static host may be moved, so the `id` inside the file
 * is not believed: it is set from the address that the file came from.
 *
 * References
 * - IIIF Image API 3.0, section 5: the address of info.json is the id with `/info.json`.
 */

export async function tileSource(service: string): Promise<string> {
  const address = new URL(`${service}/info.json`, document.baseURI).href;
  const answer = await fetch(address).catch(() => null);
  if (answer === null) throw new Error('The picture could not be fetched: no connection.');
  if (!answer.ok)
    throw new Error(`The picture could not be fetched: ${answer.status} at ${address}.`);
  const info = (await answer.json().catch(() => null)) as object | null;
  if (info === null) throw new Error(`What came from ${address} does not describe a picture.`);
  const described = { ...info, id: address.replace(/\/info\.json$/, '') };
  // The library takes the description as an object; its type file only knows text here.
  return described as unknown as string;
}
