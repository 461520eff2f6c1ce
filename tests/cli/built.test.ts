/** The program as it is shipped: plain JavaScript, the packages of `dependencies`, any folder. */
import { execFileSync, spawn } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { SLOW } from '../slow.ts';
import { type Answer, coarseText, ended, fileOf, freshFolder, startSource } from './commandLine.ts';

interface Package {
  bin: Record<string, string>;
  dependencies: Record<string, string>;
}
interface Lock {
  packages: Record<string, { dev?: boolean; devOptional?: boolean; optional?: boolean }>;
}

const about = JSON.parse(readFileSync('package.json', 'utf8')) as Package;
const lock = JSON.parse(readFileSync('package-lock.json', 'utf8')) as Lock;
const installed = freshFolder();
const program = join(installed, about.bin.trumpetry!);
const built = () => dirname(program);

/** What `npm ci --omit=dev` leaves of node_modules. */
function productionOnly(): string[] {
  const all = Object.entries(lock.packages);
  return all
    .filter(([path, { dev, devOptional, optional }]) => path && !(dev || devOptional || optional))
    .map(([path]) => path);
}

beforeAll(() => {
  execFileSync(process.execPath, ['sim/cli/build.mjs', built()]);
  for (const path of productionOnly()) cpSync(path, join(installed, path), { recursive: true });
});

/** Run from a folder where nothing of ours is, by the link that npm makes of `bin`. */
function fromElsewhere(...words: string[]): Promise<Answer> {
  const bin = join(freshFolder(), 'bin');
  mkdirSync(bin);
  symlinkSync(program, join(bin, 'trumpetry'));
  const env = { PATH: `${bin}:${dirname(process.execPath)}` };
  return ended(spawn('trumpetry', words, { cwd: freshFolder(), env }));
}

describe('built', () => {
  const file = fileOf(coarseText());

  const CURVE = ['curve', ['--length', '180mm']] as const;

  test.each(SLOW ? [CURVE, ['sweep', []] as const] : [CURVE])(
    '%s: the bytes of the source',
    async (command, more) => {
      const words = [command, file, '--json', '--workers', '2', ...more];
      const source = await ended(startSource(...words));
      expect(source).toMatchObject({ code: 0, stderr: '' });
      expect(await fromElsewhere(...words)).toEqual(source);
    },
  );

  test('what is wrong is told without a stack trace', async () => {
    const { code, stderr } = await fromElsewhere('sweep', 'none.yaml');
    expect(code).toBe(2);
    expect(stderr).toBe('error: none.yaml: there is no such file; check the path\n');
  });

  test('imports nothing but Node and packages that are installed without developers’', () => {
    const files = readdirSync(built()).filter((name) => name.endsWith('.mjs'));
    const texts = files.map((name) => readFileSync(join(built(), name), 'utf8'));
    const names = texts.flatMap((text) => [...text.matchAll(/^(?:import|\} from) .*?"(.*?)";$/gm)]);
    const outside = new Set(names.map(([, name]) => name!).filter((name) => !/^\.\//.test(name)));
    const packages = [...outside].filter(
      (name) => !builtinModules.includes(name.replace('node:', '')),
    );
    expect(packages).toEqual(['tinypool']);
    expect(about.dependencies).toHaveProperty('tinypool');
  });

  test('the licences of what is inside come with it', () => {
    const text = readFileSync(join(built(), 'licences.txt'), 'utf8');
    const inside = Object.keys(about.dependencies).filter((name) => name !== 'tinypool');
    for (const name of inside) expect(text).toContain(`${name}\n\n`);
    expect(
      text.match(/Permission is hereby granted|Permission to use, copy/g)!.length,
    ).toBeGreaterThan(10);
  });
});
