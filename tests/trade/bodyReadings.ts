/** Readings off throttle bodies made up from errors that are known, with noise of a stated seed. */
import type { BodyFigure } from '../../sim/decision/bodyErrors.ts';
import { portFilling } from '../../sim/decision/portFilling.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { normalNumbers } from '../normal.ts';
import { readDemo } from '../toy.ts';

export interface KnownBodies {
  /** Each plate [deg], bleed (effective area) [m^2] and gauge [-]. */
  plates: readonly number[];
  bleeds: readonly number[];
  gauges: readonly number[];
  /** By how much a body answers more to its errors than computed [-]. */
  answer?: number;
}

/** A load, and the gauge at each body, from 1. */
export interface BodyLoad {
  speed: number;
  angle: number;
  bleedShut?: boolean;
  gauges: readonly number[];
  /** By how much a body answers more to its errors than computed [-]. */
  answer?: number;
}

export const withBleed = (bore: number, open: number): EngineSpecification => {
  const { engine } = readDemo('hill-climb');
  const throttle = { ...engine.intake.throttle, bleed: { bore, open } };
  return { ...engine, intake: { ...engine.intake, throttle } };
};

/** @param repeatability standard deviation of a reading [-] */
export function madeBodies(
  engine: EngineSpecification,
  figure: BodyFigure,
  errors: KnownBodies,
  loads: readonly BodyLoad[],
  repeatability: number,
  seed: number,
) {
  const normal = normalNumbers(seed);
  const outside = engine.intake.feed.pressure;
  const { bleed: _, ...shut } = engine.intake.throttle;
  const withoutBleed = { ...engine, intake: { ...engine.intake, throttle: shut } };
  return loads.flatMap(({ speed, angle, bleedShut, gauges, answer = 0 }, state) =>
    errors.plates.map((plate, body) => {
      const figureOf = (by: number, bleed: number) => {
        const { flow, mean } = bleedShut
          ? portFilling(withoutBleed, speed, angle + by)
          : portFilling(engine, speed, angle + by, bleed);
        return figure === 'flow' ? flow : outside - mean;
      };
      const set = figureOf(0, 0);
      const value = set * (figureOf(plate, errors.bleeds[body]!) / set) ** (1 + answer);
      const gauge = gauges[body]! - 1;
      const wrong = 1 + errors.gauges[gauge]! + repeatability * normal();
      return { state, body, gauge, value: value * wrong };
    }),
  );
}

const ONE = [1, 1, 1, 1];

/** The readings beside the demo of the hill-climb four: invented errors, noise of seed 14. */
export const DEMO = {
  seed: 14,
  repeatability: 0.01,
  bore: 0.0025,
  open: 0.5,
  errors: {
    plates: [0, -0.08, 0.12, 0.02],
    bleeds: [0, 0.3e-6, -0.2e-6, 0.5e-6],
    gauges: [0],
  },
  loads: [
    { speed: 1200, angle: 9.5, bleedShut: true, gauges: ONE },
    { speed: 1000, angle: 8.6, bleedShut: false, gauges: ONE },
    { speed: 2000, angle: 12, bleedShut: false, gauges: ONE },
  ],
};

const REMARKS = [
  'Mean vacuum in the ports of the hill-climb four; invented, made by tests/trade/bodyReadings.ts with seed 14.',
  'repeatability: 1 %',
  'lever: 22 mm',
  'pitch: 0.7 mm',
  'bleedBore: 2.5 mm',
  'bleedOpen: 50 %',
  'bleedTurns: 3',
  'master: 1',
];

export function demoBodies(): string {
  const { errors, loads, repeatability, seed, bore, open } = DEMO;
  const made = madeBodies(withBleed(bore, open), 'vacuum', errors, loads, repeatability, seed);
  const rows = made.map(({ state, body, value }) => {
    const { speed, angle, bleedShut } = loads[state]!;
    return [speed, angle, bleedShut ? 0 : 1, body + 1, (value / 1000).toFixed(2)].join(',');
  });
  const head = 'speed_rpm,plate_deg,bleeds,cylinder,vacuum_kPa';
  return `${[...REMARKS.map((remark) => `# ${remark}`), head, ...rows].join('\n')}\n`;
}
