/** Runs the proof: every published value beside ours, on the terminal, as JSON and as pages. */
import { EXIT } from '../../sim/cli/exit.ts';
import { openFolder } from '../../sim/cli/files.ts';
import { jsonText, print, printJson, remark, type Terminal } from '../../sim/cli/terminal.ts';
import { prove } from './proof.ts';
import { runStudy, STUDIES } from './studies.ts';
import { proofDocument, proofMarkdown, proofText, studiesMarkdown } from './table.ts';

export interface ProofOptions {
  out?: string;
  pages?: string;
  slow?: boolean;
}

/** `checks` says which are run; all where it is left out. Gives the exit code. */
export function runProof(terminal: Terminal, options: ProofOptions, checks = prove): number {
  const run = (slow: boolean) =>
    checks(slow, ({ holds, group, what }) => {
      if (!holds) remark(terminal, `fails: ${group}: ${what}`);
    });
  const fast = run(false);
  const slow = options.slow ? run(true) : [];
  const outcomes = [...fast, ...slow];
  print(terminal, proofText(outcomes));
  const held = options.slow ? STUDIES.map((study) => ({ ...study, holds: runStudy(study) })) : [];
  const document = { ...proofDocument(outcomes), studies: held };
  write(terminal, options.out, 'proof.json', jsonText(document));
  write(terminal, options.pages, 'proof.md', proofMarkdown(fast));
  if (options.slow) write(terminal, options.pages, 'studies.md', studiesMarkdown(slow, held));
  printJson(terminal, document);
  const holds = document.failed === 0 && held.every((study) => study.holds);
  return holds ? EXIT.done : EXIT.failed;
}

/** Only where a folder was named. */
function write(terminal: Terminal, folder: string | undefined, name: string, text: string): void {
  if (folder === undefined) return;
  print(terminal, [`Written: ${openFolder(folder).write(name, text)}`]);
}
