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

/** The path of an address, or undefined where it is none. */
function pathOf(url) {
  try {
    return normalize(decodeURIComponent(new URL(url, 'http://localhost').pathname));
  } catch {
    return undefined;
  }
}

/** The file at a path inside `root`, or undefined. */
function fileFor(root, path) {
  const file = join(root, path);
  if (!file.startsWith(root) || file.includes('\0') || !existsSync(file)) return undefined;
  return statSync(file).isDirectory() ? fileFor(root, join(path, 'index.html')) : file;
}

const says = (response, status, words) =>
  response
    .writeHead(status, { 'content-type': 'text/plain', 'content-length': words.length })
    .end(words);

/** Answers requests with the files of the site in `root`. */
export function siteHandler(root) {
  return (request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      says(response, 405, 'Only to be read.');
      return;
    }
    const path = pathOf(request.url);
    if (path === undefined) {
      says(response, 400, 'This is no address.');
      return;
    }
    const file = fileFor(root, path);
    if (file?.endsWith('index.html') && !/(\/|index\.html)$/.test(path)) {
      response.writeHead(301, { location: `${encodeURI(path)}/` }).end();
      return;
    }
    const shown = file ?? join(root, '404.html');
    if (!existsSync(shown)) {
      says(response, 404, 'Not here.');
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
    const server = createServer(siteHandler(root));
    server.on('error', (error) => {
      if (error.code === 'EADDRINUSE' && port !== 0) resolve(serve(root, 0));
      else reject(error);
    });
    server.listen(port, '127.0.0.1', () => resolve(`http://127.0.0.1:${server.address().port}/`));
  });
}
