/** `npm run readme`: renews what the README quotes. Sweeps the demo scenario, so it takes a minute. */
import { readFileSync, writeFileSync } from 'node:fs';
import { answer, freshFolder } from './cli/commandLine.ts';
import { exampleSection, SECTIONS, withSection } from './readmeSections.ts';

const { code, stdout, stderr } = await answer(
  ...['sweep', 'scenarios/hill-climb.yaml', '--out', freshFolder()],
);
if (code !== 0) throw new Error(`the demo sweep ended with ${code}: ${stdout}${stderr}`);
let readme = readFileSync('README.md', 'utf8');
for (const [name, text] of Object.entries(SECTIONS)) readme = withSection(readme, name, text);
writeFileSync('README.md', withSection(readme, 'example', exampleSection(stdout)));
