/** Tiles in development, at the addresses they will have when published. */
import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname, join } from 'node:path';
import type { Places } from '../pipeline/places.ts';
import { tiltFolder } from '../pipeline/tilt-stills.ts';
import { readResult } from '../pipeline/results.ts';
import { placedInfo, serviceId } from './service-info.ts';

/** `plates/<slug>/tilt/<n>.webp`. */
const still = /^plates\/([a-z0-9-]+)\/tilt\/(\d+\.webp)$/;
/** `plates/<slug>/views/<view>/<rest>`; names and IIIF paths hold nothing else. */
const address =
  /^plates\/([a-z0-9-]+)\/views\/([a-z0-9-]+)\/([a-z0-9,/-]+\.(?:jpg|webp|png|json))$/;

const mediaTypes: Readonly<Record<string, string>> = {
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.png': 'image/png',
  '.json': 'application/json',
};

export function serveTiles(places: Places, base: string) {
  return (request: IncomingMessage, response: ServerResponse, next: () => void): void => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    // Astro strips the base path before some middlewares and not before others.
    const rest = path.startsWith(base) ? path.slice(base.length) : path.slice(1);
    const mixed = still.exec(rest);
    const found = address.exec(rest);
    const sent = mixed
      ? sendStill(places, mixed[1], mixed[2], response)
      : found && send(places, base, { slug: found[1], view: found[2], file: found[3] }, response);
    if (!sent) {
      next();
      return;
    }
    sent.catch(() => {
      response.statusCode = 404;
      response.end('No such tile.');
    });
  };
}

async function sendStill(
  places: Places,
  slug: string,
  file: string,
  response: ServerResponse,
): Promise<void> {
  const result = await readResult(places, slug);
  const folder = result?.pair?.stills?.folder;
  if (folder === undefined) throw new Error('no stills');
  await sendFile(join(places.cache, tiltFolder, folder, file), response);
}

async function sendFile(path: string, response: ServerResponse): Promise<void> {
  await stat(path);
  response.setHeader('content-type', mediaTypes[extname(path)]);
  createReadStream(path).pipe(response);
}

async function send(
  places: Places,
  base: string,
  { slug, view, file }: { slug: string; view: string; file: string },
  response: ServerResponse,
): Promise<void> {
  const result = await readResult(places, slug);
  const found = result?.views.find((v) => v.id === view);
  if (!found) throw new Error('unknown view');
  const layer = found.layers.find(({ name }) => file.startsWith(`${name}/`));
  const path = layer
    ? join(places.layers, layer.folder, file.slice(layer.name.length + 1))
    : join(places.tiles, found.tiles, file);
  if (file === 'info.json') {
    const text = await readFile(path, 'utf8');
    response.setHeader('content-type', 'application/json');
    response.end(placedInfo(text, serviceId(slug, view, { base, address: undefined })));
    return;
  }
  await sendFile(path, response);
}
