/**
 * Engelman's worked example (500 cc, R 11, 1.5 in2, 13 in: 4872 rpm, 4094 to 5117 rpm for K from 2.5
 * to 2.0) through the full solver, for docs/limits.md. Slow (a minute):
 *
 *   node --import tsx tests/prove/workedExample.ts
 *
 * What the example does not say was taken from the hill-climb four before the comparison: valves,
 * timing, rod. Straight pipe, end correction counted within the 13 in; exhaust a stub, so that no
 * exhaust wave helps. Ends with 0 where the page's figure, 10 %, holds.
 */

import { runPoint } from '../../sim/engine/point.ts';
import type { PipeSpecification } from '../../sim/specification.ts';
import { engelmanTunedSpeed, tunedPeaks } from '../acoustics/tunedSpeed.ts';
import { hillClimb } from './cases/engine.ts';

const INCH = 0.0254;
const AREA = 1.5 * INCH ** 2;
const LENGTH = 13 * INCH;
const BORE = Math.sqrt((4 * AREA) / Math.PI);
const END_CORRECTION = 0.6127;
const BODY = 0.02;
const PORT = 0.03;

const straight = (length: number, diameter = BORE): PipeSpecification => ({
  length,
  outerDiameter: diameter,
  innerDiameter: diameter,
  wallTemperature: 293.15,
  roughness: 1e-6,
  bendLoss: 0,
});

const { exhaust, ...engine } = hillClimb();
const stub = { ...straight(0.03, 0.06), wallTemperature: 600 };
const spec = {
  ...engine,
  cylinder: { ...engine.cylinder, compressionRatio: 11 },
  intake: {
    ...engine.intake,
    trumpet: {
      ...straight(LENGTH - (END_CORRECTION * BORE) / 2 - BODY - PORT),
      bellmouth: { depth: 0, overhang: 0, entryLoss: 0.5, endCorrection: END_CORRECTION },
    },
    throttle: {
      ...engine.intake.throttle,
      length: BODY,
      bore: BORE,
      shaftPosition: BODY / 2,
      openLoss: 0,
    },
    runner: straight(0),
    port: straight(PORT),
  },
  exhaust: { valve: exhaust.valve, port: stub, primary: stub, joined: 1, silencerLoss: 0 },
};

const speeds = Array.from({ length: 29 }, (_, i) => 2600 + 200 * i);
const efficiency = speeds.map((speed) => runPoint(spec, speed).volumetricEfficiency);
const peaks = tunedPeaks(speeds, efficiency);
const formula =
  60 *
  engelmanTunedSpeed(
    { area: AREA, length: LENGTH },
    { displacement: 30.51 * INCH ** 3, compressionRatio: 11 },
    1125 * 0.3048,
  );
console.log(`Engelman ${formula.toFixed(0)} rpm; the solver's peaks, the highest first:`);
for (const { speed, volumetricEfficiency } of peaks) {
  console.log(
    `${speed.toFixed(0)} rpm, ${(100 * (speed / formula - 1)).toFixed(1)} %, volumetric efficiency ${volumetricEfficiency.toFixed(3)}`,
  );
}
process.exitCode = Math.abs(peaks[0]!.speed / formula - 1) < 0.1 ? 0 : 1;
