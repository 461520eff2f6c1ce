/**
 * Flow through throats and valves: the flow function, a choked valve and a flow bench as steady
 * networks, and the scenarios' own flow-bench points.
 * Sources: flow function computed from its closed form, Heywood (1988), app. C (from memory), as in
 * NACA Report 1135; flow bench figures computed from the same: 28 inH2O, air at 20 degC and
 * 101.325 kPa.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { criticalRatio, flowFunction, nozzleFlux } from '../../sim/boundary/nozzle.ts';
import { openEnd } from '../../sim/boundary/openEnd.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { valve } from '../../sim/boundary/valve.ts';
import { effectiveValveArea } from '../../sim/cylinder/valveFlow.ts';
import { Duct } from '../../sim/duct/duct.ts';
import { profileOf } from '../../sim/duct/profile.ts';
import { portLoss } from '../../sim/engine/intakeDucts.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { PipeSpecification, ValveSpecification } from '../../sim/specification.ts';
import { INCH_OF_WATER } from '../../sim/units.ts';
import { AIR_R, perfectAir } from '../gases.ts';
import { oneDuct, runFor } from '../network.ts';

const gas = perfectAir();

describe('flow function, gamma 1.4', () => {
  it.each([
    [0.99, 0.140662],
    [0.98, 0.197846],
    [0.95, 0.307641],
    [0.93, 0.359862],
    [0.9, 0.422581],
    [0.85, 0.501799],
    [0.8, 0.560661],
    [0.75, 0.605155],
    [0.7, 0.638317],
    [0.65, 0.661888],
    [0.6, 0.676915],
    [0.55, 0.684021],
    [0.5283, 0.684731],
    [0.2, 0.684731],
  ])('at p2/p01 = %f', (ratio, psi) => {
    expect(Math.abs(flowFunction(ratio, 1.4) - psi)).toBeLessThan(1e-6);
    const flux = nozzleFlux(1e5, 300, AIR_R, 1.4, ratio * 1e5);
    expect(Math.abs(flux / ((psi * 1e5) / Math.sqrt(AIR_R * 300)) - 1)).toBeLessThan(5e-6);
  });

  it.each([
    [1.3, 0.545728, 0.667262],
    [1.33, 0.540364, 0.672628],
    [1.35, 0.536851, 0.676145],
    [1.4, 0.528282, 0.684731],
  ])('chokes with gamma %f', (gamma, ratio, psi) => {
    expect(Math.abs(criticalRatio(gamma) - ratio)).toBeLessThan(1e-6);
    expect(Math.abs(flowFunction(0, gamma) - psi)).toBeLessThan(1e-6);
  });
});

interface Bench {
  duct: Duct;
  /** Pressure and temperature where the gas comes from, and pressure where it goes. */
  from: { pressure: number; temperature: number };
  to: number;
  area: number;
  /** Into a cylinder the valve comes last, out of it first. */
  into: boolean;
}

/** Steady mass flow [kg/s] from one still gas to another through a duct and a valve. */
function steadyFlow({ duct, from, to, area, into }: Bench, time: number): number {
  const source = new OpenAir(gas, from);
  const sink = new OpenAir(gas, { pressure: to, temperature: from.temperature });
  const open = (end: DuctEnd) => openEnd(end, into ? source : sink);
  const throttled = (end: DuctEnd) => valve(end, into ? sink : source, () => area);
  duct.fill(gas, { pressure: into ? from.pressure : to, temperature: from.temperature });
  const net = oneDuct(
    duct,
    { gas },
    into ? { low: open, high: throttled } : { low: throttled, high: open },
  );
  runFor(net, time);
  const faces = duct.mesh.cells + 1;
  let sum = 0;
  for (let i = 0; i < faces; i++) sum += duct.flux.mass[i]! * duct.mesh.faceArea[i]!;
  return sum / faces;
}

const wide = () =>
  new Duct(profileOf([{ length: 0.1, outerDiameter: 0.08, innerDiameter: 0.08 }]), {
    name: 'wide',
    largestCell: 0.01,
  });

describe('a valve of 300 mm2 on a wide pipe as a steady network', () => {
  it.each([true, false])(
    'chokes as the formula says; gas flowing through the pipe first: %s',
    (into) => {
      const area = 3e-4;
      const from = { pressure: 3e5, temperature: 400 };
      const flow = steadyFlow({ duct: wide(), from, to: 1e5, area, into }, 0.05);
      const formula = (0.684731 * area * 3e5) / Math.sqrt(AIR_R * 400);
      expect(Math.abs(flow / formula - 1)).toBeLessThan(5e-3);
    },
  );

  it.each([true, false])('passes 124.73 kg/s per m2 at 28 inH2O; pipe first: %s', (into) => {
    const area = 3e-4;
    const from = { pressure: 101325, temperature: 293.15 };
    const to = from.pressure - 28 * INCH_OF_WATER;
    const flow = steadyFlow({ duct: wide(), from, to, area, into }, 0.05);
    expect(Math.abs(flow / (124.73 * area) - 1)).toBeLessThan(5e-3);
  });
});

/** The demo scenarios that give flow-bench points. */
const SCENARIOS = ['hill-climb', 'endurance-six'];

/** The port as the bench sees it, run as a duct; flow is in at the port's outer end or out there. */
function portDuct(port: PipeSpecification, into: boolean): Duct {
  const [outerDiameter, innerDiameter] = into
    ? [port.outerDiameter, port.innerDiameter]
    : [port.innerDiameter, port.outerDiameter];
  return new Duct(profileOf([{ length: port.length, outerDiameter, innerDiameter }]), {
    name: 'port',
    largestCell: 0.005,
    roughness: port.roughness,
    lossPerLength: () => port.bendLoss / port.length,
  });
}

describe.each(SCENARIOS)('flow bench of %s', (name) => {
  const { engine } = readScenario(readFileSync(`scenarios/${name}.yaml`, 'utf8'), name);
  const sides: [string, ValveSpecification, PipeSpecification, boolean][] = [
    ['intake', engine.intake.valve, engine.intake.port, true],
    ['exhaust', engine.exhaust.valve, engine.exhaust.port, false],
  ];
  for (const [side, spec, port, into] of sides) {
    const { flow } = spec;
    if (flow.kind !== 'bench') continue;
    it(`gives back the ${side} points within 1 %`, () => {
      const areaOf = effectiveValveArea(spec, portLoss(port));
      const from = { pressure: flow.pressure, temperature: flow.temperature };
      const density = flow.pressure / (AIR_R * flow.temperature);
      const off = flow.lift.map((lift, i) => {
        const duct = portDuct(port, into);
        const to = flow.pressure - flow.depression;
        const found = steadyFlow({ duct, from, to, area: areaOf(lift), into }, 0.04);
        return found / density / flow.flow[i]! - 1;
      });
      expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.01);
    });
  }
});
