/**
 * Builds the program to plain JavaScript: `trumpetry.mjs`, beside it what its worker threads run, and
 * the licences of the packages inside. The package of the thread pool stays outside, for it has workers
 * of its own.
 *
 *   node sim/cli/build.mjs [FOLDER]     FOLDER: dist/program where absent
 */
import { chmodSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
const folder = resolve(process.argv[2] ?? join(root, 'dist/program'));
const program = join(folder, 'trumpetry.mjs');

/** CommonJS packages inside an ES module want a `require`. */
const REQUIRE =
  "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);";

const esbuild = await import('esbuild').catch(() => undefined);
if (esbuild) await build(esbuild.build);
else if (!existsSync(program)) {
  // npm runs this too where developers' packages are left out; a program built before stays.
  console.error('The program is not built: first npm ci, then npm prune --omit=dev.');
}

async function build(bundle) {
  rmSync(folder, { recursive: true, force: true });
  const { metafile } = await bundle({
    absWorkingDir: root,
    entryPoints: { trumpetry: 'sim/cli/main.ts', pointWorker: 'sim/cli/pointWorker.ts' },
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    external: ['tinypool'],
    banner: { js: REQUIRE },
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'error',
    metafile: true,
  });
  writeFileSync(join(folder, 'licences.txt'), licences(Object.keys(metafile.inputs)));
  chmodSync(program, 0o755);
}

function licences(files) {
  const found = files.map((file) => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(file)?.[1]);
  const packages = [...new Set(found.filter(Boolean))].sort();
  return packages.map((name) => `${name}\n\n${licence(name)}`).join(`\n${'-'.repeat(72)}\n\n`);
}

/** Its licence as it comes with it; only the name of it where it brings no text. */
function licence(name) {
  const home = join(root, 'node_modules', name);
  const text = readdirSync(home).find((file) => /^licen[cs]e/i.test(file));
  if (text) return readFileSync(join(home, text), 'utf8');
  return `${JSON.parse(readFileSync(join(home, 'package.json'), 'utf8')).license}\n`;
}
