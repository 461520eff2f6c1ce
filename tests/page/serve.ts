/** A plain static server on loopback, for a built page below some folder. */
import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
};

/** Serves `folder` below `/some/folder/`, so that absolute paths of the page would be found out. */
export async function serve(folder: string): Promise<{ server: Server; address: string }> {
  const below = '/some/folder/';
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://127.0.0.1');
    const path = pathname.startsWith(below) ? pathname.slice(below.length) || 'index.html' : '';
    readFile(join(folder, normalize(`/${path}`))).then(
      (body) =>
        response
          .writeHead(200, {
            'content-type': TYPES[extname(path)] ?? 'application/octet-stream',
            // Names of assets hold a digest, so a browser may keep them.
            'cache-control': path.startsWith('assets/') ? 'max-age=3600' : 'no-cache',
          })
          .end(body),
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return { server, address: `http://127.0.0.1:${port}${below}` };
}
