import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';

const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json'
};

/** The file for an address inside `root`, or undefined. */
function fileFor(root, url) {
  const path = normalize(decodeURIComponent(new URL(url, 'http://localhost').pathname));
  const file = join(root, path);
  if (!file.startsWith(root) || !existsSync(file)) return undefined;
  return statSync(file).isDirectory()
    ? fileFor(root, `${path.replace(/\/?$/, '/')}index.html`)
    : file;
}

function handler(root) {
  return (request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const folder = join(root, normalize(decodeURIComponent(pathname)));
    if (!pathname.endsWith('/') && existsSync(folder) && statSync(folder).isDirectory()) {
      response.writeHead(301, { location: `${pathname}/` }).end();
      return;
    }
    const file = fileFor(root, request.url ?? '/');
    const shown = file ?? join(root, '404.html');
    if (!existsSync(shown)) {
      response.writeHead(404, { 'content-type': 'text/plain' }).end('Not here.');
      return;
    }
    const type = types[extname(shown)] ?? 'application/octet-stream';
    response.writeHead(file ? 200 : 404, { 'content-type': type, 'cache-control': 'no-cache' });
    createReadStream(shown).pipe(response);
  };
}

/**
 * Serves a folder on 127.0.0.1; a port in use gives way to a free one.
 * Resolves to the address.
 */
export function serve(root, port) {
  return new Promise((resolve, reject) => {
    const server = createServer(handler(root));
    server.on('error', (error) => {
      if (error.code === 'EADDRINUSE' && port !== 0) resolve(serve(root, 0));
      else reject(error);
    });
    server.listen(port, '127.0.0.1', () => resolve(`http://127.0.0.1:${server.address().port}/`));
  });
}
