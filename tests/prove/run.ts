/** Runs the proof: every published value beside ours, on the terminal, as JSON and as pages. */
import { EXIT } from '../../sim/cli/exit.ts';
import { openFolder } from '../../sim/cli/files.ts';
import { jsonText, print, printJson, remark, type Terminal } from '../../sim/cli/terminal.ts';
import { prove } from './proof.ts';
import { runStudy, STUDIES } from './studies.ts';
import { proofDocument, proofMarkdown, proofText, studiesMarkdown } from './table.ts';

export interface ProofOptions {
  out?: string;
  slow?: boolean;
}

export function runProof(terminal: Terminal, options: ProofOptions): number {
  const run = (slow: boolean) =>
    prove(slow, ({ holds, group, what }) => {
      if (!holds) remark(terminal, `fails: ${group}: ${what}`);
    });
  const fast = run(false);
  const slow = options.slow ? run(true) : [];
  const outcomes = [...fast, ...slow];
  print(terminal, proofText(outcomes));
  const held = options.slow ? STUDIES.map((study) => ({ ...study, holds: runStudy(study) })) : [];
  const document = { ...proofDocument(outcomes), studies: held };
  writeJson(terminal, options, jsonText(document));
  writePage(terminal, 'proof.md', proofMarkdown(fast));
  if (options.slow) writePage(terminal, 'studies.md', studiesMarkdown(slow, held));
  printJson(terminal, document);
  const holds = document.failed === 0 && held.every((study) => study.holds);
  return holds ? EXIT.done : EXIT.failed;
}

/** With JSON on stdout no file is written unless a folder is named. */
function writeJson(terminal: Terminal, { out }: ProofOptions, text: string): void {
  if (out === undefined && terminal.json) return;
  print(terminal, [`Written: ${openFolder(out ?? 'out').write('proof.json', text)}`]);
}

/** A page of the repository's documentation. */
function writePage(terminal: Terminal, name: string, text: string): void {
  if (terminal.json) return;
  print(terminal, [`Written: ${openFolder('docs').write(name, text)}`]);
}
