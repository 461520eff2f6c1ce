/** What a report calls that which throttles. No source: words. */
import { expect, test } from 'vitest';
import { THROTTLE_KINDS, throttleOf } from '../../sim/loss/throttles.ts';
import { reportHtml, reportText } from '../../sim/report/report.ts';
import { throttleNamed } from '../../sim/report/throttleNames.ts';
import { barDrawing } from '../../sim/study/signal/drawing.ts';
import { demo, roadFour } from '../scenario.ts';

const TOLD = {
  answer: ['Plates 8 deg apart: the plate of body 2. Template, plated.'],
  tables: [{ label: 'By plate', key: 'plate', cells: [['one plate', 8]] }],
};

test('a plate is a plate', () => {
  expect(throttleNamed(TOLD, {})).toBe(TOLD);
});

test('a slide or barrel goes by its name, in cells too, but not in keys of files', () => {
  expect(throttleNamed(TOLD, { kind: 'slide' })).toEqual({
    answer: ['Slides 8 deg apart: the slide of body 2. Template, plated.'],
    tables: [{ label: 'By slide', key: 'plate', cells: [['one slide', 8]] }],
  });
  expect(throttleNamed('plates', { kind: 'barrel' })).toBe('barrels');
});

test('a report in both forms', () => {
  const scenario = demo('hill-climb');
  const { engine } = scenario;
  const throttle = { ...engine.intake.throttle, kind: 'barrel' as const, barrelDiameter: 0.068 };
  const slid = { ...scenario, engine: { ...engine, intake: { ...engine.intake, throttle } } };
  const report = {
    about: 'Test',
    scenario: slid,
    answer: ['Open the plate.'],
    flags: [],
    sections: [{ sentences: ['Two plates.'] }],
    outcomes: [],
  };
  expect(reportText(report).join('\n')).toContain('Open the barrel.');
  expect(reportText(report).join('\n')).toContain('Two barrels.');
  expect(reportHtml(report)).toContain('Open the barrel.');
  expect(reportText({ ...report, scenario }).join('\n')).toContain('Open the plate.');
});

test('the bar is drawn with what throttles the runners, and names it', () => {
  const { engine, pressureBar } = roadFour();
  const kinds = [{}, { kind: 'slide' }, { kind: 'barrel' }] as const;
  expect(kinds).toHaveLength(THROTTLE_KINDS.length);
  const shapes = kinds.map((kind) => {
    const throttle = { ...engine.intake.throttle, ...kind };
    const fitted = { ...engine, intake: { ...engine.intake, throttle } };
    const { text } = barDrawing(fitted, pressureBar, 'mm').picture;
    const { noun } = throttleOf(kind);
    expect(text).toContain(`>${noun}s</text>`);
    expect(text).toContain(`aria-label="Runners with their ${noun}s;`);
    expect(text.includes('plate')).toBe(noun === 'plate');
    return [...text.matchAll(/ d="([^"]*)"/g)].map(([, d]) => d).join();
  });
  expect(new Set(shapes).size).toBe(kinds.length);
});
