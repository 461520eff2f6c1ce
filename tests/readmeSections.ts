/** Parts of the README that the program itself says: kept the same by a test, renewed by a script. */
import { CAUTIONS, KNOWN, LENGTH_DRAWING, LENGTH_MEANING, NOT_KNOWN } from '../sim/index.ts';

const fenced = (text: string) => `\`\`\`\n${text.trimEnd()}\n\`\`\``;
const list = (items: readonly string[]) => items.map((item) => wrapped(`- ${item}`)).join('\n');

/** Everything between markers but the example, by name. */
export const SECTIONS: Record<string, string> = {
  length: `${wrapped(LENGTH_MEANING, '')}\n\n${fenced(LENGTH_DRAWING)}`,
  cautions: list(CAUTIONS),
  known: list(KNOWN),
  unknown: list(NOT_KNOWN),
};

/** The output of `npm start` as it stands in the README: without the place of the files. */
export function exampleSection(output: string): string {
  return fenced(
    output.replace(/Written: .*/, 'Written: out/sweep.csv, out/sweep.json, out/report.html'),
  );
}

const between = (name: string) =>
  new RegExp(`(<!-- begin ${name} -->\\n)([\\s\\S]*?)(\\n?<!-- end ${name} -->)`);

/** What stands between the markers of that name. */
export function sectionOf(readme: string, name: string): string {
  const found = between(name).exec(readme);
  if (!found) throw new Error(`README.md has no markers for ${name}`);
  return found[2]!;
}

/** The README with another text between the markers of that name. */
export function withSection(readme: string, name: string, text: string): string {
  sectionOf(readme, name);
  return readme.replace(between(name), (_, begin, __, end: string) => {
    return `${begin}${text}\n${end.trimStart()}`;
  });
}

function wrapped(text: string, indent = '  ', width = 100): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (longer.length > width) {
      lines.push(line);
      line = indent + word;
    } else line = longer;
  }
  return [...lines, line].join('\n');
}
