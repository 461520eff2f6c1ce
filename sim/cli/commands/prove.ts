/**
 * `prove`: every published value beside ours. The checks live with the tests, so the command works
 * in the repository only; it is the one place where the program reaches for them.
 */
import { ComputationError, EXIT } from '../exit.ts';
import { openFolder } from '../files.ts';
import { jsonText, print, printJson, remark, type Terminal } from '../terminal.ts';

export interface ProveOptions {
  out?: string;
  slow?: boolean;
}

/** Folder of the page of the documentation. */
const DOCS = 'docs';

export async function prove(terminal: Terminal, options: ProveOptions): Promise<number> {
  const { proof, studies, table } = await checks();
  const slow = options.slow ?? false;
  const outcomes = proof.prove(slow, ({ holds, group, what }) => {
    if (!holds) remark(terminal, `fails: ${group}: ${what}`);
  });
  const document = table.proofDocument(outcomes);
  print(terminal, table.proofText(outcomes));
  write(terminal, options, 'proof.json', jsonText(document));
  if (!terminal.json) writePage(terminal, 'proof.md', table.proofMarkdown(outcomes));
  const held = slow ? studies.STUDIES.map(studies.runStudy) : [];
  if (slow && !terminal.json) writePage(terminal, 'studies.md', studies.studiesMarkdown(held));
  printJson(terminal, document);
  return document.failed === 0 && held.every(Boolean) ? EXIT.done : EXIT.failed;
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

function write(terminal: Terminal, { out }: ProveOptions, name: string, text: string): void {
  if (out === undefined && terminal.json) return;
  print(terminal, [`Written: ${openFolder(out ?? 'out').write(name, text)}`]);
}

function writePage(terminal: Terminal, name: string, text: string): void {
  print(terminal, [`Written: ${openFolder(DOCS).write(name, text)}`]);
}
