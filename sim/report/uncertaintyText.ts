/** How sure the answer is, as lines of text. */
import { change, percent } from './figures.ts';
import { uncertaintySentences } from './questionWords.ts';
import { textTable, wrapped } from './textTable.ts';
import type { Doubt } from './uncertaintyDocument.ts';

/** Inputs listed. */
const LISTED = 10;

export function uncertaintyText({ study, inputs }: Doubt): string[] {
  const rows = study.effects.slice(0, LISTED).map(({ input, effect, share }) => {
    const { text, given } = inputs.find(({ path }) => path === input)!;
    return [input, text, change(effect, 2), percent(100 * share, 0), given ? 'given' : ''];
  });
  const table = textTable(
    ['input', 'spread', 'gain over half of it', 'share', ''],
    rows,
    [0, 1, 4],
  ).map((line) => `  ${line}`);
  return [
    'How sure',
    ...uncertaintySentences(study).flatMap((sentence) =>
      wrapped(sentence, 90, '  ').map((line) => `  ${line}`),
    ),
    ...(rows.length > 0 ? ['', ...table] : []),
    '',
  ];
}
