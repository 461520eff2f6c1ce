/**
 * The compiled step does in each lane what the TypeScript step does, to the last bit: for odd and even
 * numbers of cells, hot and cold gas, shocks and flow above the speed of sound, whole engines at two
 * speeds side by side; and no lane knows what the other does.
 */
import { describe, expect, it } from 'vitest';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { closedEnd, openEnd, orifice, valve } from '../../sim/boundary/node.ts';
import { OpenAir, Tapping, Volume } from '../../sim/boundary/reservoir.ts';
import { Duct } from '../../sim/duct/duct.ts';
import { lengthOf, profileOf } from '../../sim/duct/profile.ts';
import { Run } from '../../sim/engine/cycle.ts';
import { solo } from '../../sim/engine/driver.ts';
import { engineModel, type Solved } from '../../sim/engine/plan.ts';
import { runPoint, runSpeeds } from '../../sim/engine/point.ts';
import { NonPhysicalStateError } from '../../sim/errors.ts';
import type { Kernel } from '../../sim/kernel/load.ts';
import * as AT from '../../sim/step/layout.ts';
import { airAndProducts } from '../gases.ts';
import { kernelWith, laneOf } from '../lanes.ts';
import { network, oneDuct, TAPERED } from '../network.ts';
import { demo, meshed } from '../scenario.ts';

const LENGTH = lengthOf(TAPERED);
const gas = airAndProducts();
const air = new OpenAir(gas, { pressure: 1e5, temperature: 290 });
const box = new OpenAir(gas, { pressure: 2.2e5, temperature: 900, burned: 1 });

/** A tube of hot products at a pressure [Pa] behind cold air, between an open end and a valve. */
function tube(cells: number, pressure: number) {
  const duct = new Duct(TAPERED, {
    name: 'tube',
    largestCell: LENGTH / cells,
    roughness: 1e-5,
    wallTemperature: (x) => (x < 0.2 ? 350 : 0),
    lossPerLength: (x) => (x < 0.1 ? 3 : 0),
  });
  duct.fillEach(gas, (x) => ({
    pressure: x < 0.2 ? 1e5 : pressure,
    temperature: x < 0.2 ? 300 : 2350,
    velocity: 60 * Math.sin(12 * x),
    burned: x < 0.3 ? 0 : 0.9,
    fuel: x < 0.1 ? 0.03 : 0,
  }));
  const low = (end: DuctEnd) => openEnd(end, air, 0.3);
  const high = (end: DuctEnd) => valve(end, box, () => 3e-4);
  return { duct, net: oneDuct(duct, { gas }, { low, high }) };
}

/** Where two columns differ, with what they hold there: too long to be printed whole. */
function differences(a: Float64Array, b: Float64Array): string[] {
  const places = [...a.keys()].filter((i) => !Object.is(a[i], b[i]));
  return places.slice(0, 5).map((i) => `${i}: ${a[i]} and ${b[i]}, of ${places.length}`);
}

/** One step of every lane. */
function step(kernel: Kernel, dts: readonly number[]): void {
  dts.forEach((dt, lane) => {
    kernel.X[kernel.lanes * AT.DT + lane] = dt;
  });
  kernel.call.step!();
}

/** A tube whose side a thin line leads from into a box, whose gas stands at a pressure [Pa]. */
function tapped(pressure: number) {
  const { duct } = tube(17, 2e5);
  const options = { name: 'line', largestCell: 0.02, roughness: 1e-6, wallTemperature: () => 300 };
  const thin = { drag: 60, warming: 25, turbulent: 0.8 };
  const line = new Duct(profileOf([{ length: 0.1, outerDiameter: 0.004, innerDiameter: 0.004 }]), {
    ...options,
    thin,
  });
  line.fill(gas, { pressure, temperature: 320, fuel: 0.02 });
  const vessel = new Volume('box', 2e-5);
  vessel.fill(gas, { pressure, temperature: 320 });
  const nodes = [
    openEnd(new DuctEnd(duct, 'low'), air, 0.3),
    closedEnd(new DuctEnd(duct, 'high')),
    orifice(new DuctEnd(line, 'low'), new Tapping(duct, 0.15), 4e-6),
    openEnd(new DuctEnd(line, 'high'), vessel),
  ];
  return network([duct, line], nodes, { gas, volumes: [vessel] });
}

it('a thin line from the side of a tube repeats the TypeScript step in lanes', () => {
  const nets = [tapped(3e5), tapped(5e4)];
  const columns = nets.map((net) => net.layout.column);
  const kernel = kernelWith(nets[0]!.layout, columns);
  for (let i = 0; i < 600; i++) {
    const dts = nets.map((net) => 0.8 * net.longestStep());
    nets.forEach((net, lane) => {
      net.step({ crankAngle: 0, crankStep: 0, dt: dts[lane]! });
    });
    step(kernel, dts);
    if (i % 50 > 0 && i < 599) continue;
    for (const [lane, column] of columns.entries())
      expect(differences(laneOf(kernel, lane, column.length), column)).toEqual([]);
  }
});

describe('a tube in lanes', () => {
  it.each([3, 4, 17, 18, 61])('repeats the TypeScript step on %i cells', (cells) => {
    const tubes = [tube(cells, 9e5), tube(cells, 3e5)];
    const [{ duct, net }] = tubes as [(typeof tubes)[0]];
    expect(duct.mesh.cells).toBe(cells);
    const columns = tubes.map((one) => one.net.layout.column);
    const kernel = kernelWith(net.layout, columns);
    for (let i = 0; i < 600; i++) {
      const dts = tubes.map((one) => 0.8 * one.net.longestStep());
      tubes.forEach((one, lane) => {
        one.net.step({ crankAngle: 0, crankStep: 0, dt: dts[lane]! });
      });
      step(kernel, dts);
      if (i % 50 > 0 && i < 599) continue;
      for (const [lane, column] of columns.entries())
        expect(differences(laneOf(kernel, lane, column.length), column)).toEqual([]);
    }
  });

  it('spoils nothing but itself by a state that makes no sense', () => {
    const tubes = [tube(40, 5e7), tube(40, 3e5)];
    const [wild, tame] = tubes as [(typeof tubes)[0], (typeof tubes)[0]];
    const kernel = kernelWith(
      wild.net.layout,
      tubes.map(({ net }) => net.layout.column),
    );
    const failure = () => {
      try {
        wild.net.step({ crankAngle: 0, crankStep: 0, dt: 4e-5 });
      } catch (error) {
        if (error instanceof NonPhysicalStateError) return error.state;
        throw error;
      }
      return undefined;
    };
    let state: ReturnType<typeof failure>;
    for (let i = 0; i < 50 && !state; i++) {
      state = failure();
      tame.net.step({ crankAngle: 0, crankStep: 0, dt: 1e-6 });
      step(kernel, [4e-5, 1e-6]);
    }
    expect(state).toBeDefined();
    const { column } = tame.net.layout;
    expect(differences(laneOf(kernel, 1, column.length), column)).toEqual([]);
    // What the lane of the other holds makes as little sense.
    wild.net.load(laneOf(kernel, 0, column.length));
    expect(failure()).toBeDefined();
  });
});

describe('an engine in lanes', () => {
  it.each<[string, Solved]>([
    ['one cylinder', 'unlike'],
    ['all cylinders', 'all'],
  ])('%s: repeats the TypeScript step at two speeds', (_name, solved) => {
    const model = engineModel(meshed(demo('hill-climb').engine, 1.4), solved);
    const { layout } = model.network;
    const rest = layout.column.slice();
    const runs = [4300, 7900].map((speed) => {
      model.network.load(rest);
      const run = new Run(model, speed);
      run.start(false);
      run.beginCycle();
      layout.column[AT.CRANK_LEFT] = 700;
      return layout.column.slice();
    });
    const kernel = kernelWith(layout, runs);
    const steps = 300;
    expect(kernel.call.run!(steps)).toBe(steps);
    runs.forEach((column, lane) => {
      model.network.load(column);
      model.network.run(steps);
      expect(differences(laneOf(kernel, lane, column.length), layout.column)).toEqual([]);
    });
  });
});

describe('points in lanes', () => {
  it.each(['sprint-single', 'uneven-twin'] as const)(
    'of the %s are those of the TypeScript step, whatever runs beside them',
    (name) => {
      const engine = meshed(demo(name).engine, 2.5);
      const speeds = [3000, 7500, 5500];
      const together = runSpeeds(engine, speeds);
      expect(together).toEqual(runSpeeds(engine, speeds, solo));
      expect(together[1]).toEqual(runPoint(engine, 7500));
      expect(together).toEqual(runSpeeds(engine, [...speeds].reverse()).reverse());
    },
  );
});
