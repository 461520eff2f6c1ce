/**
 * The engine's intake handed to the linear induction cycle of `acoustics`: an estimate of the tuned
 * speeds that shares no equation with the flow solver. It knows no exhaust, no steepening and no
 * flow that carries the waves.
 */
import type { BreathingCylinder, InductionGas, IntakePipe } from '../acoustics/linearInduction.ts';
import type { DuctSection } from '../acoustics/transferMatrix.ts';
import { cylinderVolume, sweptVolume } from '../cylinder/crank.ts';
import { effectiveValveArea } from '../cylinder/valveFlow.ts';
import { CYCLE, liftCurve, wrapAngle } from '../cylinder/valveLift.ts';
import type { Duct } from '../duct/duct.ts';
import { fanningFactor } from '../loss/friction.ts';
import type { EngineSpecification } from '../specification.ts';
import { intakeDucts, mouthDiameter, portLoss } from './intakeDucts.ts';
import { workingGas } from './workingGas.ts';

export interface LinearIntake {
  pipe: IntakePipe;
  cylinder: BreathingCylinder;
  gas: InductionGas;
}

/** Sections finer than this change nothing: a tenth of the shortest wave of interest. */
const SECTION = 0.01;

export function linearIntake(spec: EngineSpecification): LinearIntake {
  const { intake } = spec;
  const { trumpet, runner } = intakeDucts(intake, SECTION);
  const sections = [...sectionsOf(trumpet), ...sectionsOf(runner)];
  const { pressure, temperature } = intake.feed;
  const { gas } = workingGas(spec);
  const density = pressure / (gas.gasConstant(0, 0) * temperature);
  return {
    // The ducts' profile has the end correction in it already.
    pipe: { sections, endCorrection: 0, loss: losses(spec), lossDiameter: intake.throttle.bore },
    cylinder: breathingCylinder(spec),
    gas: { pressure, density, soundSpeed: gas.soundSpeed(temperature, 0, 0) },
  };
}

/**
 * Dynamic heads of the bore [-], the mean of both ways: in, the mouth's entry loss; out, the whole
 * head of the jet at the rim; both, plate, port and friction of the rest.
 */
function losses(spec: EngineSpecification): number {
  const { trumpet, throttle, runner, port } = spec.intake;
  const rim = (trumpet.outerDiameter / mouthDiameter(spec.intake)) ** 4;
  const mouth = 0.5 * (trumpet.bellmouth.entryLoss + rim);
  const f = fanningFactor(1e5, trumpet.roughness / throttle.bore);
  const friction = (4 * f * (trumpet.length + throttle.length + runner.length)) / throttle.bore;
  return mouth + throttle.openLoss + portLoss(port).heads + friction;
}

function breathingCylinder(spec: EngineSpecification): BreathingCylinder {
  const { valve } = spec.intake;
  const lift = liftCurve(valve.lift);
  const area = effectiveValveArea(valve, portLoss(spec.intake.port));
  // Angles counted on from the exhaust stroke, so that induction is one stretch.
  const opening = CYCLE / 4 + wrapAngle(lift.open - CYCLE / 4);
  const closing = opening + lift.close - lift.open;
  const exhaust = liftCurve(spec.exhaust.valve.lift);
  return {
    volume: (angle) => cylinderVolume(spec.cylinder, angle),
    effectiveArea: (angle) =>
      angle <= opening || angle >= closing ? 0 : area(lift.lift(wrapAngle(angle))),
    displacement: sweptVolume(spec.cylinder),
    exhaustClosing: CYCLE / 4 + wrapAngle(exhaust.close - CYCLE / 4),
    intakeClosing: closing,
  };
}

function sectionsOf(duct: Duct): DuctSection[] {
  const { faceArea, cells, dx } = duct.mesh;
  const diameter = (i: number) => 2 * Math.sqrt(faceArea[i]! / Math.PI);
  return Array.from({ length: cells }, (_, i) => ({
    length: dx,
    diameter1: diameter(i),
    diameter2: diameter(i + 1),
  }));
}
