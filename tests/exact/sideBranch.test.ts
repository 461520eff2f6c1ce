/**
 * A pipe with a shut pipe at its side lets through, of the amplitude of a plane wave,
 *
 *   |t| = 1 / sqrt(1 + (Sb / (2 S) tan(k L))^2)
 *
 *   S, Sb  areas of pipe and branch [m^2]   L  length of the branch [m]   k = 2 pi f / c
 *
 * Source: Kinsler et al., Fundamentals of Acoustics, ch. 10 (from memory): a branch's impedance beside a pipe
 * that goes on for ever. A hole in a cell has rho c / (4 S) in series (step/tapping.ts); then, as its impedance
 * over rho c / S is Z = 1/4 - i S / (Sb tan(k L)), |t| = |Z| / |Z + 1/2|.
 */
import { describe, expect, it } from 'vitest';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { closedEnd, junction, type Node, nonReflecting, openEnd } from '../../sim/boundary/node.ts';
import { OpenAir, Tapping } from '../../sim/boundary/reservoir.ts';
import type { Duct } from '../../sim/duct/duct.ts';
import { perfectGas } from '../../sim/gas/gas.ts';
import { network, pipe, runFor } from '../network.ts';

const gas = perfectGas(1.4, 287);
const still = { pressure: 1e5, temperature: 300 };
const soundSpeed = Math.sqrt(1.4 * 287 * 300);
const [LENGTH, BORE, PLACE, EAR, BRANCH, CELLS] = [2, 0.04, 1, 1.4, 0.2, 400];
/** Height of the pulse [Pa], and how long it is listened to [s]. */
const [STRENGTH, WATCHED] = [20, 0.045];

/** A pulse that runs towards rising x from 0.5 m; the pipe may be one or cut in two. */
function pulse(duct: Duct, from = 0): void {
  duct.fillEach(gas, (x) => {
    const rise = STRENGTH * Math.exp(-(((from + x - 0.5) / 0.05) ** 2));
    const density = still.pressure / (287 * still.temperature);
    return {
      pressure: still.pressure + rise,
      temperature: still.temperature * (1 + ((0.4 / 1.4) * rise) / still.pressure),
      velocity: rise / (density * soundSpeed),
    };
  });
}

const outside = () => new OpenAir(gas, still);

/** Pressure above rest at the ear while the pulse passes, at even times. */
function heard(ducts: Duct[], nodes: Node[], ear: () => number): { dt: number; rise: number[] } {
  const net = network(ducts, nodes, { gas });
  const rise: number[] = [];
  const dt = (0.8 * ducts[0]!.mesh.dx) / 360;
  for (let i = 0; i < WATCHED / dt; i++) {
    net.step({ crankAngle: 0, crankStep: 0, dt });
    rise.push(ear() - still.pressure);
  }
  return { dt, rise };
}

function amplitude({ dt, rise }: { dt: number; rise: number[] }, frequency: number): number {
  let [re, im] = [0, 0];
  rise.forEach((p, i) => {
    re += p * Math.cos(2 * Math.PI * frequency * i * dt);
    im += p * Math.sin(2 * Math.PI * frequency * i * dt);
  });
  return Math.hypot(re, im);
}

function branchOf(bore: number, cells: number): Duct {
  const duct = pipe(BRANCH, bore, (cells * BRANCH) / LENGTH);
  duct.fill(gas, still);
  return duct;
}

/** The pipe, tapped or not. */
function whole(cells: number, bore?: number) {
  const main = pipe(LENGTH, BORE, cells);
  pulse(main);
  const ends = [
    nonReflecting(new DuctEnd(main, 'low'), outside()),
    nonReflecting(new DuctEnd(main, 'high'), outside()),
  ];
  const ear = () => main.prim.p.at(Math.floor((EAR / LENGTH) * cells));
  if (!bore) return heard([main], ends, ear);
  const side = branchOf(bore, cells);
  const tap = openEnd(new DuctEnd(side, 'low'), new Tapping(main, PLACE));
  return heard([main, side], [...ends, tap, closedEnd(new DuctEnd(side, 'high'))], ear);
}

/** The pipe cut in two, which meet the branch without volume. */
function cut(cells: number, bore: number) {
  const before = Math.round((PLACE / LENGTH) * cells);
  const first = pipe(PLACE, BORE, before);
  const second = pipe(LENGTH - PLACE, BORE, cells - before);
  const side = branchOf(bore, cells);
  pulse(first);
  pulse(second, PLACE);
  const ends = [
    nonReflecting(new DuctEnd(first, 'low'), outside()),
    nonReflecting(new DuctEnd(second, 'high'), outside()),
    closedEnd(new DuctEnd(side, 'high')),
  ];
  const meeting = [
    new DuctEnd(first, 'high'),
    new DuctEnd(second, 'low'),
    new DuctEnd(side, 'low'),
  ];
  const ear = () => second.prim.p.at(Math.floor((EAR / LENGTH) * cells) - before);
  return heard([first, second, side], [...ends, junction(meeting)], ear);
}

/** Largest difference of the amplitude let through from the formula [-], with so much in series over rho c / S. */
function worst(build: typeof cut, bore: number, series: number): number {
  const [free, through] = [whole(CELLS), build(CELLS, bore)];
  const off = [100, 200, 300, 380, 480, 600, 700].map((frequency) => {
    const share = amplitude(through, frequency) / amplitude(free, frequency);
    const tangent = Math.tan((2 * Math.PI * frequency * BRANCH) / soundSpeed);
    const stiff = (BORE / bore) ** 2 / tangent;
    return Math.abs(share - Math.hypot(series, stiff) / Math.hypot(series + 0.5, stiff));
  });
  return Math.max(...off);
}

describe('a pipe of 40 mm with a shut branch lets through what the formula says', () => {
  it.each([0.02, 0.04])('cut in two that meet one of bore %d without volume', (bore) => {
    expect(worst(cut, bore, 0)).toBeLessThan(3e-4);
  });

  // Thinner ones ring on for longer than is listened to.
  it.each([0.014, 0.02, 0.028])('tapped by one of bore %d', (bore) => {
    expect(worst(whole, bore, 0.25)).toBeLessThan(0.008);
  });
});

it.each([0.004, 0.02, 0.04])('tapped by one of bore %d, shut and struck, it rings down', (bore) => {
  const main = pipe(0.4, BORE, 20);
  const side = branchOf(bore, 100);
  main.fillEach(gas, (x) => ({ ...still, pressure: still.pressure + (x < 0.1 ? 500 : 0) }));
  const shut = [main, side].map((duct) => closedEnd(new DuctEnd(duct, 'high')));
  const tap = openEnd(new DuctEnd(side, 'low'), new Tapping(main, 0.13));
  const net = network([main, side], [...shut, closedEnd(new DuctEnd(main, 'low')), tap], { gas });
  const most = (seconds: number) => {
    let highest = 0;
    runFor(net, seconds, () => {
      highest = Math.max(highest, ...main.prim.p.values());
    });
    return highest - still.pressure;
  };
  const swings = Array.from({ length: 4 }, () => most(0.1));
  expect(swings).toEqual(swings.toSorted((a, b) => b - a));
});

it('a hole beyond the ends of a pipe is none', () => {
  expect(() => new Tapping(pipe(1, BORE, 10), 1.1)).toThrow('"pipe" is tapped beyond its ends');
});
