/**
 * Lets the built page be installed and work with no network at all: a service worker that keeps every file
 * of the build, and the manifest that browsers ask of a page to be installed. Nothing else is ever fetched.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { MANIFEST_ICONS, TOUCH_ICON } from './icons.ts';

const WORKER = 'sw.js';
const MANIFEST = 'page.webmanifest';

/** What the page does not need, however it is opened. */
const LEFT_OUT = /^(license\.md|\.vite\/|sw\.js)/;

export function offlinePlugin(): Plugin {
  let folder = '';
  return {
    name: 'trumpetry-offline',
    apply: 'build',
    configResolved: ({ build, root }) => {
      folder = join(root, build.outDir);
      if (build.outDir.startsWith('/')) folder = build.outDir;
    },
    transformIndexHtml: () => [
      { tag: 'link', attrs: { rel: 'manifest', href: `./${MANIFEST}` }, injectTo: 'head' },
      {
        tag: 'link',
        attrs: { rel: 'apple-touch-icon', href: `./${TOUCH_ICON.file}` },
        injectTo: 'head',
      },
    ],
    closeBundle: () => {
      writeFileSync(join(folder, MANIFEST), JSON.stringify(manifest));
      const files = filesOf(folder);
      writeFileSync(join(folder, WORKER), workerText(files, digestOf(folder, files)));
    },
  };
}

const manifest = {
  name: 'Trumpetry',
  short_name: 'Trumpetry',
  description: 'Which trumpet length to cut',
  start_url: './',
  display: 'standalone',
  background_color: '#faf9f5',
  theme_color: '#faf9f5',
  icons: [
    { src: './mark.svg', sizes: 'any', type: 'image/svg+xml' },
    ...MANIFEST_ICONS.map(({ file, size, purpose }) => ({
      src: `./${file}`,
      sizes: `${size}x${size}`,
      type: 'image/png',
      purpose,
    })),
  ],
};

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .filter((file) => !LEFT_OUT.test(file))
    .sort();
}

function digestOf(folder: string, files: readonly string[]): string {
  const digest = createHash('sha256');
  for (const file of files) digest.update(file).update(readFileSync(join(folder, file)));
  return digest.digest('hex').slice(0, 16);
}

/** Files are kept under the digest of the build; a new build takes over when the page is closed. */
const workerText = (
  files: readonly string[],
  version: string,
) => `const KEPT = 'trumpetry-${version}';
const FILES = ${JSON.stringify(['./', ...files.map((file) => `./${file}`)])};

addEventListener('install', (event) => {
  event.waitUntil(caches.open(KEPT).then((cache) => cache.addAll(FILES)));
});

addEventListener('activate', (event) => {
  const old = (name) => name.startsWith('trumpetry-') && name !== KEPT;
  event.waitUntil(
    caches.keys().then((names) => Promise.all(names.filter(old).map((name) => caches.delete(name)))),
  );
});

addEventListener('fetch', (event) => {
  if (event.request.method !== 'GET') return;
  const kept = caches.match(event.request, { cacheName: KEPT, ignoreSearch: true });
  event.respondWith(kept.then((answer) => answer ?? fetch(event.request)));
});
`;
