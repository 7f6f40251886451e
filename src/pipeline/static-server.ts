/**
 * A static host as museums have them: folders answer with their index.html, a folder without
 * its slash is redirected, everything else is a file or the 404 page. Text is compressed where
 * the browser takes it. Nothing is rewritten.
 */
import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { createServer, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { createGzip } from 'node:zlib';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.jsonld': 'application/ld+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.xml': 'application/xml',
  '.txt': 'text/plain; charset=utf-8',
};

export interface StaticServer {
  /** With the base path and a slash at the end. */
  readonly url: string;
  close(): Promise<void>;
}

/** Serve `root` under `base` (both slashes) on a free port of this machine. */
export async function serveStatic(root: string, base = '/'): Promise<StaticServer> {
  const server = createServer((request, response) => {
    void answer(root, base, request.url ?? '/').then(({ status, headers, file }) => {
      const packed = file !== null && compressible.test(file) && takesGzip(request);
      response.writeHead(status, packed ? { ...headers, 'content-encoding': 'gzip' } : headers);
      if (file === null) response.end();
      else if (packed) createReadStream(file).pipe(createGzip()).pipe(response);
      else createReadStream(file).pipe(response);
    });
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}${base}`,
    close: () =>
      new Promise((closed) => {
        server.closeAllConnections();
        server.close(() => {
          closed();
        });
      }),
  };
}

const compressible = /\.(html|js|css|json|jsonld|svg|xml|txt)$/;

function takesGzip(request: IncomingMessage): boolean {
  return /\bgzip\b/.test(String(request.headers['accept-encoding']));
}

interface Answer {
  readonly status: number;
  readonly headers: Record<string, string>;
  readonly file: string | null;
}

async function answer(root: string, base: string, url: string): Promise<Answer> {
  const path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
  const missing: Answer = { status: 404, headers: {}, file: null };
  if (!path.startsWith(base)) return missing;
  let file = join(root, normalize(`/${path.slice(base.length)}`));
  const found = await stat(file).catch(() => null);
  if (found?.isDirectory()) {
    if (!path.endsWith('/')) return { status: 301, headers: { location: `${path}/` }, file: null };
    file = join(file, 'index.html');
  }
  if (await stat(file).catch(() => null)) {
    return { status: 200, headers: typeOf(file), file };
  }
  const page = join(root, '404.html');
  const hasPage = await readFile(page).then(Boolean, () => false);
  return hasPage ? { status: 404, headers: typeOf(page), file: page } : missing;
}

function typeOf(file: string): Record<string, string> {
  return { 'content-type': types[extname(file)] ?? 'application/octet-stream' };
}
