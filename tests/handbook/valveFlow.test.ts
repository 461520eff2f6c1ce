/**
 * The scenarios' own flow-bench points, as a steady network. Published rows of throats, choking and
 * the bench are in tests/prove/valveFlow.ts.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { effectiveValveArea } from '../../sim/cylinder/valveFlow.ts';
import { Duct } from '../../sim/duct/duct.ts';
import { profileOf } from '../../sim/duct/profile.ts';
import { portLoss } from '../../sim/engine/intakeDucts.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import type { PipeSpecification, ValveSpecification } from '../../sim/specification.ts';
import { AIR_R } from '../gases.ts';
import { steadyFlow } from '../prove/cases/valveBench.ts';

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
