/**
 * What docs/firing.md says in numbers: the same pipes and cylinders, fired evenly and unevenly.
 *
 *   node --import tsx tests/prove/firing.ts
 */
import { readFileSync } from 'node:fs';
import { fillingSpread } from '../../sim/decision/filling.ts';
import { type PointResult, runSpeeds } from '../../sim/engine/point.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { withLength } from '../../sim/sweep/sweep.ts';

const read = (name: string) => readFileSync(`scenarios/${name}.yaml`, 'utf8');
const engineOf = (text: string) => readScenario(text, 'engine.yaml').engine;

/** The text with a piece replaced, which must be there. */
function edited(text: string, from: string | RegExp, to: string): string {
  const changed = text.replace(from, to);
  if (changed === text) throw new Error(`nothing to replace: ${from}`);
  return changed;
}

function points(engine: EngineSpecification, speeds: readonly number[]): PointResult[] {
  return runSpeeds(engine, speeds).map((point) => {
    if (point instanceof Error) throw point;
    return point;
  });
}

const range = (from: number, to: number, step: number) =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);
const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
const percent = (value: number, of = 1) => `${((100 * value) / of).toFixed(1)} %`;
const row = (...cells: unknown[]) => console.log(`| ${cells.join(' | ')} |`);

const FIGURES: [string, (point: PointResult) => number, (value: number) => string][] = [
  ['volumetric efficiency', (one) => one.volumetricEfficiency, (value) => value.toFixed(3)],
  ['indicated torque', (one) => one.indicatedTorque, (value) => `${value.toFixed(0)} Nm`],
  ['residual gas', (one) => one.residualFraction, percent],
  ['charge at closing', (one) => one.chargeTemperature, (value) => `${value.toFixed(0)} K`],
  ['blown out of the mouth', (one) => one.mouthOutflow, percent],
  ['back into the port', (one) => one.backflow, percent],
  ['spread between cylinders', (one) => fillingSpread(one) ?? 0, percent],
];

function eights(): void {
  const text = read('cross-plane-eight');
  const cross = engineOf(text);
  const crossed = engineOf(
    edited(text, 'groups: [1-3-5-7, 2-4-6-8]', 'groups: [1-4-6-7, 2-3-5-8]'),
  );
  const flat = engineOf(edited(text, '1-8-4-3-6-5-7-2', '1-8-3-6-7-2-5-4'));
  const speeds = range(5600, 7400, 100);
  const [uneven, even] = [points(cross, speeds), points(crossed, speeds)];
  const same = JSON.stringify(points(flat, speeds)) === JSON.stringify(even);
  console.log(`eight, 5600 to 7400 rpm; flat-plane crank the same as crossed pipes: ${same}\n`);
  if (!same || even.some((one) => (fillingSpread(one) ?? 0) > 0)) process.exitCode = 1;
  row(
    'figure',
    'banks fire 270-180-90-180',
    'each collector fires every 180',
    'difference of means',
  );
  row('---', '--:', '--:', '--:');
  for (const [name, of, told] of FIGURES) {
    const [a, b] = [mean(uneven.map(of)), mean(even.map(of))];
    row(name, told(a), told(b), b === 0 ? '' : percent(a - b, b));
  }
  const worst = uneven.reduce((a, b) => (fillingSpread(b)! > fillingSpread(a)! ? b : a));
  console.log(`\nwidest: ${percent(fillingSpread(worst)!)} at ${worst.speed} rpm`);
  for (const { numbers, volumetricEfficiency } of worst.cylinders!)
    console.log(`  ${numbers.join(' and ')}: ${volumetricEfficiency.toFixed(3)}`);
  const lengths = range(0.08, 0.4, 0.04);
  console.log('');
  row('trumpets', ...lengths.map((length) => `${(1e3 * length).toFixed(0)} mm`));
  row('---', ...lengths.map(() => '--:'));
  for (const [name, engine] of [
    ['uneven', cross],
    ['even', crossed],
  ] as const) {
    const fills = lengths.map((length) => points(withLength(engine, length), speeds));
    row(name, ...fills.map((all) => mean(all.map((one) => one.volumetricEfficiency)).toFixed(3)));
  }
}

function twins(): void {
  const text = read('uneven-twin');
  const speeds = range(6000, 8800, 200);
  console.log('\ntwin, 6000 to 8800 rpm\n');
  row('fires', 'mean VE', 'mean spread', 'widest', 'at', 'fuller there');
  row('---', '--:', '--:', '--:', '--:', '--:');
  for (const first of [180, 270, 315, 360]) {
    const fired = `[${first} deg, ${720 - first} deg]`;
    const all = points(engineOf(text.replace('[270 deg, 450 deg]', fired)), speeds);
    const spreads = all.map((one) => fillingSpread(one) ?? 0);
    const widest = all[spreads.indexOf(Math.max(...spreads))]!;
    const [one, two] = widest.cylinders ?? [];
    const fuller = one && two && (one.volumetricEfficiency > two.volumetricEfficiency ? 1 : 2);
    row(
      `${first} and ${720 - first}`,
      mean(all.map((point) => point.volumetricEfficiency)).toFixed(3),
      percent(mean(spreads)),
      percent(Math.max(...spreads)),
      fuller ? `${widest.speed} rpm` : '-',
      fuller ?? '-',
    );
  }
}

/** Each pipe of a four in turn; lengths from valve to last joint alike. */
const SHAPES: [string, (text: string) => string][] = [
  ['four into one', (text) => text],
  [
    'four-two-one, 1-4 and 2-3',
    (text) =>
      edited(
        edited(text, 'length: 820 mm', 'length: 480 mm'),
        '  tail:',
        '  secondary:\n    length: 340 mm\n    diameter: 49 mm\n  tail:',
      ),
  ],
  [
    'four-two-one, 1-3 and 2-4',
    (text) =>
      edited(
        edited(
          edited(text, 'length: 820 mm', 'length: 480 mm'),
          '  bore: 86 mm',
          '  firing:\n    order: 1-3-4-2\n  bore: 86 mm',
        ),
        '  tail:',
        '  secondary:\n    groups: [1-3, 2-4]\n    length: 340 mm\n    diameter: 49 mm\n  tail:',
      ),
  ],
  [
    'stepped after 410 mm',
    (text) =>
      edited(
        edited(text, 'length: 820 mm', 'length: 410 mm'),
        '  joined: 4',
        '  step:\n    length: 410 mm\n    diameter: 44.5 mm\n  joined: 4',
      ),
  ],
  [
    "collector's cone of 200 mm",
    (text) =>
      edited(
        text,
        '  tail:',
        '  collector:\n    length: 200 mm\n    diameterValveEnd: 76 mm\n    diameterAirEnd: 60 mm\n  tail:',
      ),
  ],
];

function fours(): void {
  const text = read('hill-climb');
  console.log('\nfour, 200 mm trumpets\n');
  row('exhaust', '3000 to 5200 rpm', '5400 to 7400 rpm', '7600 to 8600 rpm', 'widest spread');
  row('---', '--:', '--:', '--:', '--:');
  for (const [name, change] of SHAPES) {
    const engine = withLength(engineOf(change(text)), 0.2);
    const bands = [range(3000, 5200, 200), range(5400, 7400, 200), range(7600, 8600, 200)];
    const all = bands.map((speeds) => points(engine, speeds));
    const spreads = all.flat().map((point) => fillingSpread(point) ?? 0);
    row(
      name,
      ...all.map((band) => mean(band.map((one) => one.volumetricEfficiency)).toFixed(3)),
      percent(Math.max(...spreads)),
    );
  }
}

eights();
twins();
fours();
