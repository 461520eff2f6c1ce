/** What every builder of such intakes has seen; common practice, no source. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readScenario, runPoint, withLength } from '../../sim/index.ts';
import { butterflyOpenArea } from '../../sim/loss/butterfly.ts';

const file = 'scenarios/hill-climb.yaml';
const { engine } = readScenario(readFileSync(file, 'utf8'), file);
// Trends stand on a coarse mesh already.
engine.numerics = { ...engine.numerics, intakeCell: 0.02, exhaustCell: 0.05, settle: 2e-3 };
const speeds = [4200, 5000, 5800, 6600, 7400, 8200];
const lengths = [0.06, 0.16, 0.3];

const efficiency = (spec: typeof engine, speed: number) =>
  runPoint(spec, speed).volumetricEfficiency;

describe('trumpet length', () => {
  let curves: number[][];
  beforeAll(() => {
    curves = lengths.map((length) =>
      speeds.map((speed) => efficiency(withLength(engine, length), speed)),
    );
  });

  it('longer, moves the best speed down', () => {
    const centre = curves.map((curve) => {
      const most = curve.map((ve) => (ve - Math.min(...curve)) ** 2);
      return most.reduce((sum, w, i) => sum + w * speeds[i]!, 0) / most.reduce((a, b) => a + b);
    });
    expect(centre[0]!).toBeGreaterThan(centre[1]!);
    expect(centre[1]!).toBeGreaterThan(centre[2]!);
  });

  it('is best nowhere at every speed: a gain here is paid for there', () => {
    const best = speeds.map((_, j) =>
      curves.reduce((at, curve, i) => (curve[j]! > curves[at]![j]! ? i : at), 0),
    );
    expect(new Set(best).size).toBeGreaterThan(1);
    expect(best[0]!).toBeGreaterThan(best[best.length - 1]!);
  });
});

describe('throttle plate', () => {
  it('a little closer to the valve or further from it matters little wide open', () => {
    const { throttle, trumpet } = engine.intake;
    const moved = structuredClone(engine);
    // The same pipe, the plate 15 mm nearer the mouth.
    moved.intake.throttle = { ...throttle, shaftPosition: throttle.shaftPosition - 0.015 };
    expect(trumpet.length).toBe(moved.intake.trumpet.length);
    for (const speed of [5000, 7400]) {
      expect(Math.abs(efficiency(moved, speed) / efficiency(engine, speed) - 1)).toBeLessThan(0.01);
    }
  });

  it('part open it fills less the closer it stands to the valve: the volume behind it fills between strokes', () => {
    // Mass balance of the volume behind the plate; sim/decision/portFilling.ts without waves.
    const at = (shaftPosition: number) => {
      const throttle = { ...engine.intake.throttle, shaftPosition, angle: 20 };
      return efficiency({ ...engine, intake: { ...engine.intake, throttle } }, 7000);
    };
    const [far, near] = [at(0.007), at(0.048)];
    expect(near / far).toBeLessThan(0.92);
    expect(near / far).toBeGreaterThan(0.75);
  });

  it('a tenth of a degree is a large share of the flow just open, and none wide open', () => {
    const share = (angle: number) =>
      butterflyOpenArea(engine.intake.throttle, angle + 0.1) /
        butterflyOpenArea(engine.intake.throttle, angle) -
      1;
    expect(share(engine.intake.throttle.closedAngle + 1)).toBeGreaterThan(0.08);
    expect(share(88)).toBeLessThan(0.001);
  });
});
