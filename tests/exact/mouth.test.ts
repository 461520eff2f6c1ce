/**
 * The mouth as the solver has it: a shut pipe rings as one longer by the mouth's acoustic length,
 * plain or flared, on fine and coarse cells; a weak wave is thrown back as Levine & Schwinger (1948,
 * Phys. Rev. 73:383) have it for an unflanged end; slow air drawn in loses its entry's heads.
 */
import { describe, expect, it } from 'vitest';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { mouth, nonReflecting, valve } from '../../sim/boundary/node.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { perfectGas } from '../../sim/gas/gas.ts';
import { mouthLength } from '../../sim/loss/mouthLength.ts';
import { mouthImpedance } from '../../sim/loss/mouthRadiation.ts';
import { network, oneDuct, pipe, runFor } from '../network.ts';
import { magnitudeLevineSchwinger } from '../prove/cases/levineSchwinger.ts';

const SOUND = 343.2;
const PRESSURE = 101325;
const TEMPERATURE = 293.15;
const gas = perfectGas(1.4, SOUND ** 2 / (1.4 * TEMPERATURE));
const DENSITY = (1.4 * PRESSURE) / SOUND ** 2;
const STILL = { density: DENSITY, soundSpeed: SOUND };
const BORE = 0.045;
const RADIUS = BORE / 2;
const air = () => new OpenAir(gas, { pressure: PRESSURE, temperature: TEMPERATURE });

/** A state of slightly raised pressure, moving with a wave towards falling x. */
const raised = (share: number, moving: boolean) => {
  const p = 1 + share;
  const sound = p ** (0.2 / 1.4);
  return {
    pressure: PRESSURE * p,
    temperature: TEMPERATURE * sound ** 2,
    velocity: moving ? -5 * SOUND * (sound - 1) : 0,
  };
};

/** What a shut pipe of 0.3 m rings as if it were longer by [m]. */
function lengthAdded(l: number, cells: number): number {
  const length = 0.3;
  const duct = pipe(length, BORE, cells);
  duct.fillEach(gas, (x) => raised(1e-4 * Math.sin((Math.PI * x) / (2 * length)), false));
  const impedance = mouthImpedance(BORE, l, STILL);
  const net = oneDuct(duct, { gas }, { low: (end) => mouth(end, air(), impedance) });
  const crossings: number[] = [];
  let [before, last] = [0, 0];
  runFor(net, (20 * length) / SOUND + 0.02, (time) => {
    const now = duct.prim.p.at(cells - 1) - PRESSURE;
    if (before * now < 0) crossings.push(last + ((time - last) * before) / (before - now));
    before = now;
    last = time;
  });
  const used = crossings.slice(1);
  const half = (used.at(-1)! - used[0]!) / (used.length - 1);
  return (SOUND * half) / 2 - length;
}

describe('a shut pipe', () => {
  // What it radiates makes l shorter by about (ka)^2 / 4 of itself at its note.
  it.each([
    { what: 'plain', depth: 0, overhang: 0, cells: 60 },
    { what: 'plain', depth: 0, overhang: 0, cells: 15 },
    { what: 'flared', depth: 0.012, overhang: 0.012, cells: 60 },
    { what: 'flared', depth: 0.012, overhang: 0.012, cells: 15 },
  ])('$what, rings as one longer by its mouth within 0.2 mm, $cells cells', (row) => {
    const l = mouthLength({ bore: BORE, depth: row.depth, overhang: row.overhang });
    expect(Math.abs(lengthAdded(l, row.cells) - l)).toBeLessThan(2e-4);
  });
});

/** Share that the mouth throws back of a packet of waves about ka. */
function thrownBack(ka: number): number {
  const wave = (2 * Math.PI * RADIUS) / ka;
  const width = 1.5 * wave;
  const length = 12 * wave;
  const duct = pipe(length, BORE, 720);
  const packet = (x: number) =>
    Math.exp(-(((x - 5 * wave) / width) ** 2)) * Math.cos((2 * Math.PI * x) / wave);
  duct.fillEach(gas, (x) => raised(1e-5 * packet(x), true));
  const size = () => Math.hypot(...duct.prim.p.map((p) => p - PRESSURE));
  const before = size();
  const impedance = mouthImpedance(BORE, mouthLength({ bore: BORE, depth: 0, overhang: 0 }), STILL);
  const ends = [
    mouth(new DuctEnd(duct, 'low'), air(), impedance),
    nonReflecting(new DuctEnd(duct, 'high'), air()),
  ];
  runFor(network([duct], ends, { gas }), (11 * wave) / SOUND);
  return size() / before;
}

it.each([0.2, 0.5, 1])(
  'throws a wave of ka = %f back as Levine & Schwinger, to a fiftieth',
  (ka) => {
    expect(Math.abs(thrownBack(ka) / magnitudeLevineSchwinger(ka) - 1)).toBeLessThan(0.02);
  },
);

it.each([0, 0.5, 1])('draws slow air with %f heads lost', (loss) => {
  const duct = pipe(0.2, 0.05, 20);
  duct.fill(gas, { pressure: PRESSURE, temperature: TEMPERATURE });
  const sink = new OpenAir(gas, { pressure: 0.97 * PRESSURE, temperature: TEMPERATURE });
  const impedance = mouthImpedance(0.05, 0.015, STILL);
  const net = oneDuct(
    duct,
    { gas },
    {
      low: (end) => mouth(end, air(), impedance, loss),
      high: (end) => valve(end, sink, () => 0.3 * end.area),
    },
  );
  runFor(net, 0.1);
  const [rho, u, p] = duct.endState('low') as [number, number, number];
  const heads = (PRESSURE - p) / (0.5 * rho * u * u);
  expect(Math.abs(heads / (1 + loss) - 1)).toBeLessThan(0.01);
});
