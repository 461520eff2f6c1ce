/**
 * `prove`: every published value beside ours. The checks live with the tests, so the command works
 * in the repository only; it is the one place where the program reaches for them.
 */
import { ComputationError } from '../../index.ts';
import { EXIT } from '../exit.ts';
import { openFolder } from '../files.ts';
import { jsonText, print, printJson, remark, type Terminal } from '../terminal.ts';

export interface ProveOptions {
  out?: string;
  slow?: boolean;
}

export async function prove(terminal: Terminal, options: ProveOptions): Promise<number> {
  const { proof, studies, table } = await checks();
  const run = (slow: boolean) =>
    proof.prove(slow, ({ holds, group, what }) => {
      if (!holds) remark(terminal, `fails: ${group}: ${what}`);
    });
  const fast = run(false);
  const slow = options.slow ? run(true) : [];
  const outcomes = [...fast, ...slow];
  print(terminal, table.proofText(outcomes));
  const held = options.slow
    ? studies.STUDIES.map((study) => ({ ...study, holds: studies.runStudy(study) }))
    : [];
  const document = { ...table.proofDocument(outcomes), studies: held };
  writeJson(terminal, options, jsonText(document));
  writePage(terminal, 'proof.md', table.proofMarkdown(fast));
  if (options.slow) writePage(terminal, 'studies.md', table.studiesMarkdown(slow, held));
  printJson(terminal, document);
  const holds = document.failed === 0 && held.every((study) => study.holds);
  return holds ? EXIT.done : EXIT.failed;
}

async function checks() {
  try {
    return {
      proof: await import('../../../tests/prove/proof.ts'),
      studies: await import('../../../tests/prove/studies.ts'),
      table: await import('../../../tests/prove/table.ts'),
    };
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new ComputationError(`the checks could not be loaded from tests/prove: ${why}`);
  }
}

/** With JSON on stdout no file is written unless a folder is named. */
function writeJson(terminal: Terminal, { out }: ProveOptions, text: string): void {
  if (out === undefined && terminal.json) return;
  print(terminal, [`Written: ${openFolder(out ?? 'out').write('proof.json', text)}`]);
}

/** A page of the repository's documentation. */
function writePage(terminal: Terminal, name: string, text: string): void {
  if (terminal.json) return;
  print(terminal, [`Written: ${openFolder('docs').write(name, text)}`]);
}
