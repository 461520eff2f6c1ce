/** The quick engine of the page's tests, and what the core says to its question. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type LengthStudy, lengthStudy, readScenario, runHere } from '../../sim/index.ts';
import { questionOf } from '../../web/compute/question.ts';

export const QUICK = join(import.meta.dirname, 'quick.yaml');
export const text = readFileSync(QUICK, 'utf8');
export const scenario = readScenario(text, 'quick.yaml');

/** The quick engine with a shelf, a floor, injectors and a doubtful bore, at two speeds. */
export const more = `${readFileSync(join(import.meta.dirname, 'questions.yaml'), 'utf8')}\n${text
  .replace('bore: 77 mm', 'bore: 77 mm +- 0.5 mm')
  .replace('8000 rpm, 9000 rpm, 10000 rpm, 11000 rpm, 12000 rpm', '10000 rpm, 11000 rpm')
  .replace('settle: 0.02', 'settle: 0.05')
  .replace('from: 9000 rpm', 'from: 10000 rpm')}`;

/** The quick engine with a range of speeds, which is refined between. */
export const refined = text.replace(
  /at: \[8000.*/,
  'from: 8000 rpm\n  to: 12000 rpm\n  step: 1000 rpm',
);

let study: Promise<LengthStudy> | undefined;

/** The answer, worked out once. */
export function answer(): Promise<LengthStudy> {
  study ??= lengthStudy(questionOf(scenario), runHere);
  return study;
}
