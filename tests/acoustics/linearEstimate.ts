/**
 * An engine's intake as linear acoustics sees it, from the plain specification alone: geometry, valve
 * area, losses and friction are worked out here once more, so that a fault of the flow solver in any
 * of them shows as a difference. It imports nothing of the solver (tests/architecture.test.ts) and
 * takes no end correction from the engine; what is common is the specification, gas properties of
 * air, and the physics.
 *
 *   mouth     int (a/r)^2 dx + (0.6127 - 0.05 (depth/a)^2) a   inertial length in bores [m]
 *   lift      L = Lmax (1 - (phi/w)^2)^2                  phi crank angle from mid event, w half width;
 *                                                         a shape of our own, no source
 *   bench     A = Q / sqrt(2 dp / rho)                    Bernoulli, as in the valve of linearInduction
 *   friction  4 f = 0.316 Re^(-1/4)                       smooth pipe, Blasius (1913), Re below 1e5
 *
 * a radius of the bore, r of the flare [m]; A area, Q volume flow, dp drop [SI]. No exhaust waves, no
 * steepening, no flow that carries the waves; gas at feed temperature throughout.
 */
import { vapourFraction } from '../../sim/gas/atmosphere.ts';
import { componentOf, moistAir } from '../../sim/gas/component.ts';
import type {
  CylinderSpecification,
  EngineSpecification,
  IntakeSpecification,
  LiftSpecification,
  PipeSpecification,
  ValveSpecification,
} from '../../sim/specification.ts';
import { GAS_CONSTANT } from '../../sim/units.ts';
import type { BreathingCylinder, InductionGas, IntakePipe } from './linearInduction.ts';
import { areaOf, type DuctSection } from './transferMatrix.ts';

export interface LinearIntake {
  pipe: IntakePipe;
  cylinder: BreathingCylinder;
  gas: InductionGas;
}

/**
 * What plane waves in a flare lack, outside air counted: 0.6127 - 0.05 (depth/a)^2 bore radii. Fitted
 * to potential flow into four flares (12 mm round, 20 x 20 and 30 deep x 20 wide on 45 mm, 22 x 15 on
 * 52 mm), within 0.01 radii; not for deeper ones.
 */
const UNFLANGED = 0.6127;
const DEEPER = 0.05;
const DEEPEST = 1.4;

/** Reynolds number of the intake stroke [-], an order of magnitude: Blasius asks for its fourth root. */
const REYNOLDS = 1e5;
const BENCH_AIR = 287.05;

export function linearIntake(spec: EngineSpecification): LinearIntake {
  const { intake } = spec;
  const bore = intake.trumpet.outerDiameter;
  return {
    pipe: {
      sections: sectionsOf(intake),
      endCorrection: mouthLength(intake) / (bore / 2),
      loss: losses(intake),
      lossDiameter: intake.throttle.bore,
    },
    cylinder: breathingCylinder(spec),
    gas: gasOf(spec),
  };
}

/** Inertial length of flare and outside, in lengths of the bore below the flare [m]. */
export function mouthLength({ trumpet, facingWall }: IntakeSpecification): number {
  const { depth, overhang } = trumpet.bellmouth;
  const a = trumpet.outerDiameter / 2;
  const beyond = UNFLANGED - DEEPER * Math.min(DEEPEST, depth / a) ** 2;
  const clearance =
    facingWall === undefined ? Number.POSITIVE_INFINITY : facingWall - trumpet.length;
  // The wall adds at least the mouth's image in it, a sink at twice the clearance.
  return flareLength(a, depth, overhang) + beyond * a + (a * a) / (8 * clearance);
}

/** int (a/r)^2 dx over a quarter ellipse [m], by the midpoint rule in its angle. */
function flareLength(a: number, depth: number, overhang: number): number {
  const steps = 200;
  let sum = 0;
  for (let i = 0; i < steps; i++) {
    const angle = ((i + 0.5) / steps) * (Math.PI / 2);
    const radius = a + overhang * (1 - Math.sin(angle));
    sum += depth * Math.sin(angle) * (a / radius) ** 2;
  }
  return (sum * Math.PI) / 2 / steps;
}

/** Mouth (below the flare) to valve. */
function sectionsOf({ trumpet, throttle, runner, port }: IntakeSpecification): DuctSection[] {
  const straight = trumpet.length - trumpet.bellmouth.depth;
  const pieces: [length: number, outer: number, inner: number][] = [
    [straight, trumpet.outerDiameter, trumpet.innerDiameter],
    [throttle.length, throttle.bore, throttle.bore],
    [runner.length, runner.outerDiameter, runner.innerDiameter],
    [port.length, port.outerDiameter, port.innerDiameter],
  ];
  return pieces
    .filter(([length]) => length > 0)
    .map(([length, diameter1, diameter2]) => ({ length, diameter1, diameter2 }));
}

/**
 * Dynamic heads of the throttle's bore [-], the mean of both ways: in, the mouth's entry loss; out,
 * the head of the jet that leaves the bore; both, plate, bends and friction.
 */
function losses({ trumpet, throttle, runner, port }: IntakeSpecification): number {
  const inBore = (diameter: number) => (throttle.bore / diameter) ** 4;
  const mouth = 0.5 * (trumpet.bellmouth.entryLoss + 1) * inBore(trumpet.outerDiameter);
  const pipes = [trumpet, runner, port].map((pipe) => pipeLoss(pipe) * inBore(meanDiameter(pipe)));
  return pipes.reduce((sum, loss) => sum + loss, mouth + throttle.openLoss);
}

const meanDiameter = (pipe: PipeSpecification) => (pipe.outerDiameter + pipe.innerDiameter) / 2;

/** Bends and friction of one pipe in its own dynamic heads [-]. */
function pipeLoss(pipe: PipeSpecification): number {
  const darcy = 0.316 * REYNOLDS ** -0.25;
  return pipe.bendLoss + (darcy * pipe.length) / meanDiameter(pipe);
}

function gasOf({ ambient, intake }: EngineSpecification): InductionGas {
  const { pressure, temperature } = intake.feed;
  const vapour = vapourFraction(ambient.pressure, ambient.temperature, ambient.relativeHumidity);
  const air = componentOf(moistAir(vapour));
  const R = GAS_CONSTANT / air.molarMass;
  const cp = air.heatCapacity(temperature);
  return {
    pressure,
    density: pressure / (R * temperature),
    soundSpeed: Math.sqrt((cp / (cp - R)) * R * temperature),
  };
}

function breathingCylinder({ cylinder, intake, exhaust }: EngineSpecification): BreathingCylinder {
  const { open, close, lift } = liftOf(intake.valve.lift);
  const area = valveArea(intake.valve, pipeLoss(intake.port), areaOf(meanDiameter(intake.port)));
  return {
    volume: (angle) => volumeAt(cylinder, angle),
    effectiveArea: (angle) => (angle <= open || angle >= close ? 0 : area(lift(angle))),
    displacement: areaOf(cylinder.bore) * cylinder.stroke,
    exhaustClosing: liftOf(exhaust.valve.lift).close,
    intakeClosing: close,
  };
}

/** Cylinder volume [m^3] at a crank angle [deg]: piston pin by the sides of the triangle. */
function volumeAt(cylinder: CylinderSpecification, angle: number): number {
  const { bore, stroke, rodLength, compressionRatio } = cylinder;
  const crank = stroke / 2;
  const turn = (angle * Math.PI) / 180;
  const pin = crank * Math.cos(turn) + Math.sqrt(rodLength ** 2 - (crank * Math.sin(turn)) ** 2);
  return areaOf(bore) * (crank + rodLength - pin + stroke / (compressionRatio - 1));
}

/** Events [deg], the closing between 180 and 900, and lift [m] between them. */
function liftOf(spec: LiftSpecification) {
  if (spec.kind === 'table') {
    const shift = wholeCycles(spec.angle.at(-1)!);
    const angles = spec.angle.map((angle) => angle + shift);
    const lift = (angle: number) => straightBetween(angles, spec.lift, angle);
    return { open: angles[0]!, close: angles.at(-1)!, lift };
  }
  const { open, close, checkLift, maximum } = spec;
  const width = (close - open) / 2 / Math.sqrt(1 - Math.sqrt(checkLift / maximum));
  const middle = (open + close) / 2 + wholeCycles((open + close) / 2 + width);
  const lift = (angle: number) => maximum * (1 - ((angle - middle) / width) ** 2) ** 2;
  return { open: middle - width, close: middle + width, lift };
}

/** Degrees to add to an angle, full cycles, that bring it between 180 and 900. */
function wholeCycles(angle: number): number {
  return -720 * Math.floor((angle - 180) / 720);
}

/** Effective area [m^2] of all the valves against lift [m], the port's own loss taken out of a bench's. */
function valveArea(valve: ValveSpecification, portHeads: number, portArea: number) {
  const { flow, count, diameter } = valve;
  if (flow.kind === 'bench') {
    const density = flow.pressure / (BENCH_AIR * flow.temperature);
    const ideal = Math.sqrt((2 * flow.depression) / density);
    const areas = flow.flow.map((Q) => {
      const rest = (ideal / Q) ** 2 - portHeads / portArea ** 2;
      return rest > 0 ? 1 / Math.sqrt(rest) : portArea;
    });
    return (lift: number) => straightBetween([0, ...flow.lift], [0, ...areas], lift);
  }
  if (flow.reference === 'curtain') {
    return (lift: number) =>
      straightBetween(flow.liftRatio, flow.coefficient, lift / diameter) *
      (count * Math.PI * diameter * lift);
  }
  const [ratios, coefficients] = [
    [0, ...flow.liftRatio],
    [0, ...flow.coefficient],
  ];
  return (lift: number) =>
    straightBetween(ratios, coefficients, lift / diameter) * count * areaOf(diameter);
}

/** Straight lines through points of rising x, held beyond both ends. */
function straightBetween(xs: readonly number[], ys: readonly number[], x: number): number {
  let i = 1;
  while (i < xs.length - 1 && xs[i]! < x) i++;
  const share = (x - xs[i - 1]!) / (xs[i]! - xs[i - 1]!);
  const held = Math.min(1, Math.max(0, share));
  return ys[i - 1]! + held * (ys[i]! - ys[i - 1]!);
}
