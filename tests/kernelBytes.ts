/** The WebAssembly kernel, built anew from its source. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const SOURCE = 'sim/kernel/assembly/kernel.ts';

/** The text of sim/kernel/bytes.ts. */
export function kernelFile(): string {
  const out = join(mkdtempSync(join(tmpdir(), 'kernel-')), 'kernel.wasm');
  const flags = ['-O3', '--enable', 'simd', '--runtime', 'stub', '--importMemory', '--noAssert'];
  execFileSync(process.execPath, ['node_modules/.bin/asc', SOURCE, ...flags, '-o', out]);
  const bytes = readFileSync(out).toString('base64');
  return `/** The kernel of assembly/kernel.ts, built by \`npm run kernel\`; not to be edited. */\nexport const BYTES =\n  '${bytes}';\n`;
}
