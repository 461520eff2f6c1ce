/**
 * Observed order with the wave going through the ends: a smooth pulse meets an open end, a valve, a
 * finite volume, a throttle plate; the pressure field afterwards on four meshes, each against the
 * next finer (Richardson). No source: second order is what design asks of the ends.
 */
import { describe, expect, it } from 'vitest';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { closedEnd, constriction, type Node, openEnd, valve } from '../../sim/boundary/node.ts';
import { OpenAir, Volume } from '../../sim/boundary/reservoir.ts';
import type { Duct } from '../../sim/duct/duct.ts';
import { circleArea } from '../../sim/duct/profile.ts';
import { AIR_GAMMA, AIR_R, perfectAir } from '../gases.ts';
import { network, pipe, runFor } from '../network.ts';

const gas = perfectAir();
const STILL = { pressure: 1e5, temperature: 300 };
const SOUND = Math.sqrt(AIR_GAMMA * AIR_R * STILL.temperature);
const DIAMETER = 0.05;
const AREA = circleArea(DIAMETER);

/** A simple wave of relative pressure `amplitude` about x = 0.5 m that runs towards rising x. */
function pulse(duct: Duct, amplitude: number): void {
  duct.fillEach(gas, (x) => {
    const rise = 1 + amplitude * Math.exp(-(((x - 0.5) / 0.1) ** 2));
    const temperature = STILL.temperature * rise ** (0.4 / 1.4);
    const sound = Math.sqrt(AIR_GAMMA * AIR_R * temperature);
    return { pressure: STILL.pressure * rise, temperature, velocity: 5 * (sound - SOUND) };
  });
}

interface Case {
  amplitude: number;
  /** Nodes at the pipe's high end, with what else they need. */
  make: (
    high: DuctEnd,
    cells: number,
  ) => { node: Node; ducts?: Duct[]; more?: Node[]; volume?: Volume };
}

const outside = () => new OpenAir(gas, STILL);

function behindPlate(high: DuctEnd, cells: number) {
  const next = pipe(1, DIAMETER, cells);
  next.fill(gas, STILL);
  const plate = { forward: 0.5 * AREA, backward: 0.5 * AREA };
  return {
    node: constriction(high, new DuctEnd(next, 'low'), plate),
    ducts: [next],
    more: [closedEnd(new DuctEnd(next, 'high'))],
  };
}

function box(high: DuctEnd) {
  const volume = new Volume('box', 1e-3);
  volume.fill(gas, STILL);
  return { node: valve(high, volume, () => 0.5 * AREA), volume };
}

const CASES: Record<string, Case> = {
  'closed end': { amplitude: 0.05, make: (high) => ({ node: closedEnd(high) }) },
  'open end, flow out': {
    amplitude: 0.05,
    make: (high) => ({ node: openEnd(high, outside(), 0.5) }),
  },
  'open end, flow in': {
    amplitude: -0.05,
    make: (high) => ({ node: openEnd(high, outside(), 0) }),
  },
  'valve to still gas, flow out': {
    amplitude: 0.05,
    make: (high) => ({ node: valve(high, outside(), () => 0.3 * AREA) }),
  },
  'valve to a finite volume': { amplitude: 0.05, make: box },
  'throttle plate between two pipes': { amplitude: 0.05, make: behindPlate },
};

function pressures({ amplitude, make }: Case, cells: number): number[] {
  const duct = pipe(1, DIAMETER, cells);
  pulse(duct, amplitude);
  const { node, ducts = [], more = [], volume } = make(new DuctEnd(duct, 'high'), cells);
  const nodes = [closedEnd(new DuctEnd(duct, 'low')), node, ...more];
  const net = network([duct, ...ducts], nodes, { gas, volumes: volume ? [volume] : [] });
  runFor(net, 0.83 / SOUND, undefined, 0.8);
  return [...duct.prim.p];
}

/** Mean difference between a solution and the next finer one. */
function difference(coarse: number[], fine: number[]): number {
  const sum = coarse.reduce(
    (total, p, i) => total + Math.abs(p - 0.5 * (fine[2 * i]! + fine[2 * i + 1]!)),
    0,
  );
  return sum / coarse.length;
}

describe.each(Object.entries(CASES))('%s', (_name, setup) => {
  it('is second order', () => {
    const solutions = [100, 200, 400, 800].map((cells) => pressures(setup, cells));
    const steps = [0, 1, 2].map((i) => difference(solutions[i]!, solutions[i + 1]!));
    const orders = [0, 1].map((i) => Math.log2(steps[i]! / steps[i + 1]!));
    for (const order of orders) {
      expect(order).toBeGreaterThan(1.75);
      expect(order).toBeLessThan(2.4);
    }
  });
});
