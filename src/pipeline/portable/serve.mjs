/**
 * A tiny server for a gallery's computer: gives out this folder's exhibit to this computer
 * alone. Start it with `node serve.mjs`, or `node serve.mjs 8080` for another port.
 */
import { createReadStream, realpathSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, sep } from 'node:path';

const root = realpathSync(join(import.meta.dirname, 'exhibit'));
const base = '/*BASE*/';
const port = Number(process.argv[2] ?? 8080);

const types = {
  '.css': 'text/css; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.jsonld': 'application/ld+json',
  '.pdf': 'application/pdf',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.xml': 'application/xml',
};

/** The file of an address, or where to go instead, or nothing. */
async function find(address) {
  const { pathname } = new URL(address, 'http://localhost');
  if (!pathname.startsWith(base)) return { to: base };
  const path = decodeURIComponent(pathname.slice(base.length));
  if (path.includes('\0') || path.split(/[/\\]/).includes('..')) return null;
  const file = join(root, path);
  if (file !== root && !file.startsWith(root + sep)) return null;
  const found = await stat(file);
  if (!found.isDirectory()) {
    // One address for a page, however it was reached.
    const folder = /^(.*\/)?index\.html$/.exec(path);
    return folder ? { to: `${base}${folder[1] ?? ''}` } : { file, size: found.size };
  }
  if (!pathname.endsWith('/')) return { to: `${pathname}/` };
  const page = join(file, 'index.html');
  return { file: page, size: (await stat(page)).size };
}

const server = createServer((request, response) => {
  const send = (status, headers, file) => {
    response.writeHead(status, headers);
    if (file && request.method === 'GET') createReadStream(file).pipe(response);
    else response.end();
  };
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    send(405, { allow: 'GET, HEAD' });
    return;
  }
  find(request.url ?? '/')
    .catch(() => null)
    .then((found) => {
      if (found?.to) return send(302, { location: found.to });
      if (!found) return send(404, { 'content-type': types['.html'] }, join(root, '404.html'));
      const type = types[extname(found.file)] ?? 'application/octet-stream';
      return send(200, { 'content-type': type, 'content-length': found.size }, found.file);
    });
});

server.on('error', (error) => {
  const taken = error.code === 'EADDRINUSE';
  console.error(
    taken ? `Port ${port} is taken. Choose another: node serve.mjs ${port + 1}` : error.message,
  );
  process.exit(1);
});
// This computer alone: nobody on the network is let in.
server.listen(port, '127.0.0.1', () => {
  console.log(`The exhibit is at http://127.0.0.1:${server.address().port}${base}`);
});
