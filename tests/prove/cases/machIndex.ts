/**
 * Volumetric efficiency against Taylor's inlet Mach index with all but no pipes: a 500 cc cylinder,
 * one inlet valve, stubs of 10 mm to still air at both ends, so that nothing is tuned and the valve
 * alone throttles.
 *
 *   Z = (b / D)^2 s / (Ci a)
 *
 *   b bore, D valve diameter [m]; s mean piston speed, a speed of sound at the inlet [m/s]; Ci the
 *   steady flow coefficient on pi D^2 / 4, averaged over the crank angle the valve is open
 *
 * Assumed, fixed before the comparison: inlet opens 10 deg before top centre and shuts 55 deg after
 * bottom centre, exhaust 55 deg before bottom centre to 10 deg after top (seat to seat, near the
 * timings Taylor gives for the curve); coefficients on the curtain area as by default.
 */
import { meanPistonSpeed } from '../../../sim/cylinder/crank.ts';
import { effectiveValveArea } from '../../../sim/cylinder/valveFlow.ts';
import { liftCurve } from '../../../sim/cylinder/valveLift.ts';
import { circleArea } from '../../../sim/duct/profile.ts';
import { runPoint } from '../../../sim/engine/point.ts';
import { workingGas } from '../../../sim/engine/workingGas.ts';
import type { EngineSpecification, PipeSpecification } from '../../../sim/specification.ts';
import { hillClimb } from './engine.ts';

const STUB: PipeSpecification = {
  length: 0.01,
  outerDiameter: 0.06,
  innerDiameter: 0.06,
  wallTemperature: 293.15,
  roughness: 1e-6,
  bendLoss: 0,
};

/** Discharge coefficient on the curtain against lift over diameter; invented, of the usual shape. */
const FLOW = {
  kind: 'coefficient',
  liftRatio: [0, 0.1, 0.15, 0.2, 0.25, 0.3],
  coefficient: [0.68, 0.67, 0.62, 0.58, 0.52, 0.47],
  reference: 'curtain',
} as const;

function stubEngine(): EngineSpecification {
  const spec = hillClimb();
  const { intake } = spec;
  const valve = (open: number, close: number, diameter: number) => ({
    count: 1,
    diameter,
    lift: {
      kind: 'timing' as const,
      open,
      close,
      checkLift: 1e-5,
      maximum: 0.27 * diameter,
    },
    flow: { ...FLOW, liftRatio: [...FLOW.liftRatio], coefficient: [...FLOW.coefficient] },
  });
  const bellmouth = { depth: 0, overhang: 0, entryLoss: 0, endCorrection: 0 };
  return {
    ...spec,
    cylinder: { ...spec.cylinder, count: 1, compressionRatio: 9 },
    intake: {
      ...intake,
      trumpet: { ...STUB, bellmouth },
      throttle: {
        ...intake.throttle,
        length: 0.01,
        bore: 0.06,
        shaftPosition: 0.005,
        openLoss: 0,
      },
      runner: { ...STUB, length: 0 },
      port: STUB,
      valve: valve(350, 595, 0.037),
    },
    exhaust: {
      valve: valve(125, 370, 0.034),
      port: { ...STUB, length: 0.03, wallTemperature: 600 },
      primary: { ...STUB, length: 0.03, wallTemperature: 600 },
      joined: 1,
      silencerLoss: 0,
    },
    numerics: { ...spec.numerics, intakeCell: 0.005, exhaustCell: 0.015, settle: 1e-3 },
  };
}

/** Mach index per mean piston speed [s/m]. */
function indexPerSpeed(spec: EngineSpecification): number {
  const { valve } = spec.intake;
  const lift = liftCurve(valve.lift);
  const area = effectiveValveArea(valve);
  const steps = 200;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const angle = lift.open + ((i + 0.5) / steps) * (lift.close - lift.open);
    sum += area(lift.lift(angle)) / circleArea(valve.diameter) / steps;
  }
  const sound = workingGas(spec).gas.soundSpeed(spec.intake.feed.temperature, 0, 0);
  return (spec.cylinder.bore / valve.diameter) ** 2 / (sum * sound);
}

/** Volumetric efficiency [-] at each Mach index. */
export function efficiencyAtIndex(indices: readonly number[]): number[] {
  const spec = stubEngine();
  const perSpeed = indexPerSpeed(spec);
  return indices.map((Z) => {
    const pistonSpeed = Z / perSpeed;
    const speed = pistonSpeed / meanPistonSpeed(spec.cylinder, 1);
    return runPoint(spec, speed).volumetricEfficiency;
  });
}

export const INDICES = [0.3, 0.5, 0.9, 1.2];

/**
 * The knee: where the straight line through the falling branch (Z = 0.9 and 1.2) meets the level of
 * the highest efficiency.
 */
export function kneeOf(efficiency: readonly number[]): number {
  const at = (Z: number) => efficiency[INDICES.indexOf(Z)]!;
  const slope = (at(1.2) - at(0.9)) / 0.3;
  return 0.9 + (Math.max(...efficiency) - at(0.9)) / slope;
}
