/** From modules of a step to WebAssembly. */
import { readdirSync, readFileSync } from 'node:fs';
import asc from 'assemblyscript/asc';
import type { Lanes } from '../../sim/kernel/load.ts';
import { assemblyScript } from './assemblyScript.ts';
import type { SourceModule } from './program.ts';
import { translate } from './translate.ts';

/** -O3 and --converge take twice as long and give nothing: 12.6 against 12.5 microseconds a step. */
const FLAGS = [
  ...['-O2', '--enable', 'simd', '--runtime', 'stub', '--noAssert', '--importMemory'],
  ...['--uncheckedBehavior', 'always'],
];

/** The compiled bytes; `extra` flags for trials. */
export async function compiled(text: string, extra: readonly string[] = []): Promise<Uint8Array> {
  let bytes: Uint8Array | undefined;
  const { error, stderr } = await asc.main(['step.ts', '-o', 'step.wasm', ...FLAGS, ...extra], {
    readFile: (name) => (name === 'step.ts' ? text : null),
    writeFile: (_, contents) => {
      bytes = contents as Uint8Array;
    },
    listFiles: () => [],
  });
  if (error || !bytes) throw new Error(`${error?.message}\n${stderr.toString()}`);
  return bytes;
}

export async function build(modules: readonly SourceModule[], lanes: Lanes): Promise<Uint8Array> {
  return compiled(translate(modules, assemblyScript(lanes)));
}

/** The modules of sim/step, but for the words that every target has its own way of saying. */
export function stepModules(folder = 'sim/step'): SourceModule[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.ts') && name !== 'builtins.ts')
    .sort()
    .map((name) => ({
      file: `${folder}/${name}`,
      text: readFileSync(`${folder}/${name}`, 'utf8'),
    }));
}
