/** The report as a file: nothing in it runs, nothing is fetched, whatever the scenario says. */
import { expect, test } from 'vitest';
import { reportHtml } from '../../sim/report/report.ts';
import { svgPlot } from '../../sim/report/svgPlot.ts';
import { lengthStudy } from '../../sim/study/length/compute.ts';
import { sweepReport } from '../../sim/study/length/report.ts';
import { readDemo, toyRunner } from '../toy.ts';

const scenario = readDemo('hill-climb');
const { engine, speeds, target } = scenario;
const runner = toyRunner(({ length, speed }) => 1 - ((speed - 9000 + 12e3 * length) / 1e4) ** 2);
const study = await lengthStudy(
  { engine, lengths: scenario.sweep.lengths, speeds, target },
  runner,
);

test('words of the scenario stay words', () => {
  const title = '<script>alert(1)</script> "a" & \'b\'';
  const notes = '</p><img src=x onerror=alert(1)>';
  const html = reportHtml(sweepReport(study, { ...scenario, title, notes }));
  expect(html).not.toMatch(/<script|<img/);
  expect(html).toContain("&lt;script&gt;alert(1)&lt;/script&gt; &quot;a&quot; &amp; 'b'");
});

test('every opened element is closed', () => {
  const html = reportHtml(sweepReport(study, scenario));
  const open: string[] = [];
  const tags = html
    .replace(/<style>[\s\S]*<\/style>/, '')
    .matchAll(/<(\/?)([a-z]\w*)[^>]*?(\/?)>/gi);
  for (const [, slash, name, selfClosed] of tags) {
    if (selfClosed || ['meta', 'br'].includes(name!)) continue;
    if (slash) expect(open.pop()).toBe(name);
    else open.push(name!);
  }
  expect(open).toEqual([]);
  expect(html).not.toMatch(/NaN|undefined|Infinity/);
});

test('a chart with gaps and one without points', () => {
  const series = { name: 'a', look: 'cut' as const, xs: [0, 1, 2, 3] };
  const chart = { id: 'a', caption: 'c', description: 'd', xLabel: 'x', yLabel: 'y' };
  const gap = svgPlot({ ...chart, series: [{ ...series, ys: [1, Number.NaN, 2, 3] }] }).text;
  const [, path] = /<path class="line cut" d="([^"]*)"/.exec(gap)!;
  expect(path!.match(/M/g)).toHaveLength(2);
  expect(gap).not.toContain('NaN');
  const none = svgPlot({ ...chart, series: [{ ...series, ys: [Number.NaN] }] }).text;
  expect(none).toContain('no figure to draw');
});
