/** Idle air of the demo four beside warm engines: 0.8 to 1.1 g/s a litre at 650 to 900 rpm, U.S. DOE Fact #861, 2015. */
import { expect, test } from 'vitest';
import { sweptVolume } from '../../sim/cylinder/crank.ts';
import { brakeTorque } from '../../sim/decision/brakeTorque.ts';
import { runSpeeds } from '../../sim/engine/point.ts';
import type { EngineSpecification } from '../../sim/specification.ts';
import { airMass, withAngle } from '../../sim/study/load/cell.ts';
import { IDLE_AIR_FLOW } from '../../sim/study/load/compute.ts';
import { demo } from '../scenario.ts';

const engine = coarse(demo('hill-climb').engine);
/** Air as docs/load.md tells it [g/s a litre], and plates between which torque and friction balance [deg]. */
const IDLES = [
  { speed: 650, told: 0.77, between: [8.6, 8.7] },
  { speed: 750, told: 0.86, between: [8.7, 8.8] },
  { speed: 850, told: 0.97, between: [8.7, 8.8] },
  { speed: 900, told: 1.01, between: [8.8, 8.9] },
];

/** Cells of twice the length: those of the file take four times as long. */
function coarse(fine: EngineSpecification): EngineSpecification {
  const { intakeCell, exhaustCell } = fine.numerics;
  const numerics = { ...fine.numerics, intakeCell: 2 * intakeCell, exhaustCell: 2 * exhaustCell };
  return { ...fine, numerics };
}

/** Where torque and friction balance: air [g/s a litre] and residual gas [-]. */
function balances() {
  const plates = [...new Set(IDLES.flatMap(({ between }) => between))];
  const points = plates.map((angle) => {
    const speeds = IDLES.flatMap(({ speed, between }) => (between.includes(angle) ? speed : []));
    return pointsAt(angle, speeds);
  });
  return IDLES.map(({ speed, told, between }) => {
    const [below, above] = between.map((angle) => points[plates.indexOf(angle)]!.get(speed)!);
    expect(below!.torque, `${speed} rpm`).toBeLessThan(0);
    expect(above!.torque, `${speed} rpm`).toBeGreaterThanOrEqual(0);
    const part = -below!.torque / (above!.torque - below!.torque);
    const interpolated = (of: (point: Idling) => number) =>
      of(below!) + part * (of(above!) - of(below!));
    return {
      ...{ speed, told, flow: interpolated(({ flow }) => flow) },
      residual: interpolated(({ residual }) => residual),
    };
  });
}

type Idling = Record<'torque' | 'flow' | 'residual', number>;

function pointsAt(angle: number, speeds: readonly number[]): Map<number, Idling> {
  const points = runSpeeds(withAngle(engine, angle), speeds).map((point, i): [number, Idling] => {
    if (point instanceof Error) throw point;
    const speed = speeds[i]!;
    const flow = (airMass(engine, point)! * speed) / (120 * sweptVolume(engine.cylinder));
    const { torque } = brakeTorque(point, engine);
    return [speed, { torque, flow, residual: point.residualFraction }];
  });
  return new Map(points);
}

test('750 to 900 rpm take what warm engines do; at 650 rpm less, of a charge that is half burned gas', {
  timeout: 120_000,
}, () => {
  const all = balances();
  const [slow, ...usual] = all;
  for (const { speed, told, flow } of all)
    expect(Math.abs(flow - told), `${speed} rpm: ${flow}`).toBeLessThan(0.02);
  for (const { flow } of usual) {
    expect(flow).toBeGreaterThan(IDLE_AIR_FLOW.low);
    expect(flow).toBeLessThan(IDLE_AIR_FLOW.high);
  }
  expect(slow!.flow).toBeLessThan(IDLE_AIR_FLOW.low);
  expect(slow!.flow).toBeGreaterThan(0.9 * IDLE_AIR_FLOW.low);
  // Beyond 0.3 no flame speed is known (sim/cylinder/burnDuration.ts): its cams do not idle there.
  for (const { residual } of all) expect(residual).toBeGreaterThan(0.4);
});
