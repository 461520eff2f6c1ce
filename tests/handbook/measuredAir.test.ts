/** Runs carried to the air of a scenario, by the published factors. */
import { describe, expect, it } from 'vitest';
import { vapourPressure } from '../../sim/gas/atmosphere.ts';
import type { MeasuredRun } from '../../sim/scenario/measuredRun.ts';
import { inScenarioAir } from '../../sim/study/compare/air.ts';

const scenario = { pressure: 98500, temperature: 293.15, relativeHumidity: 0 };
const run = (more: Partial<MeasuredRun>): MeasuredRun => ({
  figure: 'brake-torque',
  speeds: [1000],
  values: [200],
  ambient: {},
  ...more,
});

describe('brake torque', () => {
  it('by SAE J1349 both ways: 950 mbar and 35 degC to 1013.25 mbar and 20 degC, dry', () => {
    // Published factors 1.0701 and 0.9632 (SAE J1349 as quoted in the trade press, two decimals of
    // the pressures there): a run of the day is worth 1.0701 / 0.9632 in the other air.
    const other = { pressure: 101325, temperature: 293.15, relativeHumidity: 0 };
    const day = { pressure: 95000, temperature: 308.15, relativeHumidity: 0 };
    const { factor, words } = inScenarioAir(run({ ambient: day }), other);
    expect(Math.abs(factor - 1.0701 / 0.9632)).toBeLessThan(5e-4);
    expect(words).toContain('trust the shape only');
  });

  it('from figures corrected by ISO 1585: back from 990 mbar dry and 25 degC', () => {
    // Published factor of 980 mbar and 30 degC: 1.0224.
    const air = { pressure: 98000, temperature: 303.15, relativeHumidity: 0 };
    const { factor, run: carried } = inScenarioAir(run({ corrected: 'ISO 1585' }), air);
    expect(Math.abs(factor - 1 / 1.0224)).toBeLessThan(5e-4);
    expect(carried.values[0]).toBeCloseTo(200 * factor, 9);
  });

  it('from figures corrected by DIN 70020: total pressure counts', () => {
    const damp = { pressure: 100000, temperature: 288.15, relativeHumidity: 0.9 };
    // Published factor of 1000 mbar and 15 degC: 1.0043.
    const { factor } = inScenarioAir(run({ corrected: 'DIN 70020' }), damp);
    expect(Math.abs(factor - 1 / 1.0043)).toBeLessThan(5e-4);
  });

  it('takes the air of the scenario for what the run does not name', () => {
    expect(inScenarioAir(run({}), scenario).factor).toBe(1);
    const damp = { ...scenario, relativeHumidity: 0.6 };
    const { factor } = inScenarioAir(run({ ambient: { relativeHumidity: 0 } }), damp);
    // The run breathed dry air, the scenario does not: vapour pressure taken off the dry part.
    const vapour = vapourPressure(98500, 293.15, 0.6);
    const f = (dry: number) => 1.18 * (99000 / dry) * Math.sqrt(293 / 298) - 0.18;
    expect(factor).toBeCloseTo(f(98500) / f(98500 - vapour), 9);
    expect(factor).toBeLessThan(1);
  });
});

it('volumetric efficiency by the square root of temperature (Heywood 1988, sec. 6.2.2, from memory)', () => {
  const warm = run({ figure: 'volumetric-efficiency', ambient: { temperature: 313.15 } });
  expect(inScenarioAir(warm, scenario).factor).toBeCloseTo(Math.sqrt(293.15 / 313.15), 12);
});
