/** Findings of a study on the terminal and as files. */
import { csvPieces, type Findings, reportHtml, reportText, type Scenario } from '../index.ts';
import type { Folder } from './files.ts';
import { parquetPieces } from './parquet.ts';
import { jsonText, print, printJson, remark, type Terminal, widthOf } from './terminal.ts';
import { wavesOf } from './waves.ts';
import { writeFile } from './writing.ts';

export function present(
  terminal: Terminal,
  scenario: Scenario,
  findings: Findings,
  folder: Folder | undefined,
): void {
  const { document, report, remarks = [], also } = findings;
  print(terminal, reportText(report, widthOf(terminal)));
  warnBeside(terminal, scenario);
  for (const line of remarks) remark(terminal, line);
  writeResults(terminal, findings, folder);
  if (also) {
    writeFile(also.path, also.text);
    print(terminal, [`Written: ${also.path}, ${also.words}`]);
  }
  printJson(terminal, document);
}

/** Writes each file and says so. */
function writeResults(terminal: Terminal, findings: Findings, folder: Folder | undefined): void {
  if (!folder) return;
  const { stem, tables, audio, document, report, page = `${stem}.html` } = findings;
  const written = [
    ...Object.entries(tables).map(([name, table]) =>
      folder.write(name, { pieces: csvPieces(table) }),
    ),
    ...(findings.compact ? Object.entries(tables) : []).map(([name, table]) =>
      folder.write(name.replace(/csv$/, 'parquet'), { pieces: parquetPieces(table) }),
    ),
    folder.write(`${stem}.json`, jsonText(document)),
    folder.write(page, reportHtml(report)),
    ...(audio ? wavesOf(audio).map(([name, wave]) => folder.write(name, wave)) : []),
  ];
  print(terminal, [`Written: ${written.join(', ')}`]);
}

/** Warnings of a scenario beside a JSON result; in text they are part of the result. */
function warnBeside(terminal: Terminal, scenario: Scenario): void {
  if (!terminal.json) return;
  for (const { path, message } of scenario.warnings)
    remark(terminal, `warning: ${path}: ${message}`);
}
