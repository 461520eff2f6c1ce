/** One cylinder with its trumpet, runner and primary, from a resolved engine. Source: the parts' own files. */
import { DuctEnd } from '../boundary/ductEnd.ts';
import { wrapAngle } from '../crankAngle.ts';
import { Cylinder } from '../cylinder/cylinder.ts';
import { besideCrevices, ringsOf } from '../cylinder/rings.ts';
import { type LiftCurve, liftCurve } from '../cylinder/valveLift.ts';
import type { Duct } from '../duct/duct.ts';
import type { Firing } from '../firings.ts';
import type { EngineSpecification } from '../specification.ts';
import { primaryDuct } from './exhaustDucts.ts';
import { intakeDucts } from './intakeDucts.ts';
import type { WorkingGas } from './workingGas.ts';

/** Gas of a cylinder before the first cycle [K]; forgotten within a few. */
const START_CHARGE_TEMPERATURE = 350;

/** One cylinder and what hangs on it. */
export interface CylinderLine {
  cylinder: Cylinder;
  /** Numbers of the cylinders that do as this one, its own first. */
  like: readonly number[];
  /** Its firing behind the first cylinder's [deg]. */
  phase: number;
  intakeLift: LiftCurve;
  exhaustLift: LiftCurve;
  trumpet: Duct;
  runner: Duct;
  primary: Duct;
  /** Distance of the rim plane in front of x = 0 of the trumpet duct [m]. */
  flareDepth: number;
  mouth: DuctEnd;
  /** Just behind the throttle plate, where a gauge is tapped. */
  behindPlate: DuctEnd;
  intakeValve: DuctEnd;
  exhaustValve: DuctEnd;
}

/** A cylinder that fires as `turn` says, with its pipes, at the crank angle `start` [deg]; `like`: whom it stands for. */
export function cylinderLine(
  spec: EngineSpecification,
  working: WorkingGas,
  { angle: phase }: Firing,
  like: readonly number[],
  start: number,
): CylinderLine {
  const { intake, exhaust, numerics } = spec;
  const intakeLift = liftCurve(intake.valve.lift);
  const exhaustLift = liftCurve(exhaust.valve.lift);
  const into = intakeDucts(intake, numerics.intakeCell);
  const primary = primaryDuct(exhaust, numerics.exhaustCell);
  return {
    cylinder: filledCylinder(spec, working, { phase, intakeLift, exhaustLift }, start),
    like,
    phase,
    intakeLift,
    exhaustLift,
    ...into,
    flareDepth: intake.trumpet.bellmouth.depth,
    primary,
    mouth: new DuctEnd(into.trumpet, 'low'),
    behindPlate: new DuctEnd(into.runner, 'low'),
    intakeValve: new DuctEnd(into.runner, 'high'),
    exhaustValve: new DuctEnd(primary, 'low'),
  };
}

/** The cylinder alone, full of what it breathes. */
function filledCylinder(
  spec: EngineSpecification,
  working: WorkingGas,
  { phase, intakeLift, exhaustLift }: Pick<CylinderLine, 'phase' | 'intakeLift' | 'exhaustLift'>,
  start: number,
): Cylinder {
  const { intake, cylinder, combustion } = spec;
  const body = new Cylinder(
    {
      name: 'cylinder',
      crank: besideCrevices(cylinder),
      wallTemperature: cylinder.wallTemperature,
      burn: {
        middle: combustion.burn50,
        duration: combustion.burnDuration,
        response: combustion.burnResponse,
      },
      fuelHeat: working.fuelHeat,
      shut: { from: wrapAngle(intakeLift.close), to: exhaustLift.open },
      phase,
      rings: ringsOf(cylinder, spec.ambient.pressure),
    },
    start,
  );
  body.fill(working.gas, {
    pressure: intake.feed.pressure,
    temperature: START_CHARGE_TEMPERATURE,
    burned: 0.05,
  });
  return body;
}
