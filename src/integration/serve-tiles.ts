/** Tiles in development, at the addresses they will have when published. */
import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { join } from 'node:path';
import type { Places } from '../pipeline/places.ts';
import { readResult } from '../pipeline/results.ts';
import { placedInfo, serviceId } from './service-info.ts';

/** `plates/<slug>/views/<view>/<rest>`; names and IIIF paths hold nothing else. */
const address = /^plates\/([a-z0-9-]+)\/views\/([a-z0-9-]+)\/([a-z0-9,/]+\.(?:jpg|webp|json))$/;

export function serveTiles(places: Places, base: string) {
  return (request: IncomingMessage, response: ServerResponse, next: () => void): void => {
    const path = new URL(request.url ?? '/', 'http://localhost').pathname;
    // Astro strips the base path before some middlewares and not before others.
    const rest = path.startsWith(base) ? path.slice(base.length) : path.slice(1);
    const found = address.exec(rest);
    if (!found) {
      next();
      return;
    }
    const [, slug, view, file] = found;
    send(places, base, { slug, view, file }, response).catch(() => {
      response.statusCode = 404;
      response.end('No such tile.');
    });
  };
}

async function send(
  places: Places,
  base: string,
  { slug, view, file }: { slug: string; view: string; file: string },
  response: ServerResponse,
): Promise<void> {
  const result = await readResult(places, slug);
  const tiles = result?.views.find((v) => v.id === view)?.tiles;
  if (!tiles) throw new Error('unknown view');
  const path = join(places.tiles, tiles, file);
  if (file === 'info.json') {
    const text = await readFile(path, 'utf8');
    response.setHeader('content-type', 'application/json');
    response.end(placedInfo(text, serviceId(slug, view, { base, address: undefined })));
    return;
  }
  await stat(path);
  response.setHeader('content-type', file.endsWith('.webp') ? 'image/webp' : 'image/jpeg');
  createReadStream(path).pipe(response);
}
