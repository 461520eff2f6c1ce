/**
 * From a resolved engine to the plan of a network: one cylinder with its intake and exhaust, or all of
 * them where they breathe from one chamber, or their pipes meet and they are not alike. The plan holds
 * for every speed.
 *
 * With one cylinder solved, pipes that meet at a joint are replaced by its own echo (step/echo.ts).
 */
import { DuctEnd } from '../boundary/ductEnd.ts';
import {
  areaStep,
  type Collector,
  collector,
  junction,
  mouth,
  type Node,
  openEnd,
  valve,
} from '../boundary/node.ts';
import { OpenAir, type Volume } from '../boundary/reservoir.ts';
import { CYCLE, wrapAngle } from '../crankAngle.ts';
import { Cylinder } from '../cylinder/cylinder.ts';
import { effectiveValveArea } from '../cylinder/valveFlow.ts';
import { type LiftCurve, liftCurve } from '../cylinder/valveLift.ts';
import { wiebeBurn } from '../cylinder/wiebe.ts';
import type { Duct } from '../duct/duct.ts';
import type { Gas } from '../gas/gas.ts';
import type { EngineSpecification, IntakeSpecification } from '../specification.ts';
import { chamberParts, plateNode } from './chamber.ts';
import { exhaustDucts } from './exhaustDucts.ts';
import { intakeDucts, intakeMouth, mouthInertia, mouthLoss, portLoss } from './intakeDucts.ts';
import { Network } from './network.ts';
import { type FluxName, LIMITERS, type LimiterName } from './numerics.ts';
import { type WorkingGas, workingGas } from './workingGas.ts';

/** One cylinder and what hangs on it. */
export interface CylinderLine {
  cylinder: Cylinder;
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

export interface EngineModel {
  spec: EngineSpecification;
  working: WorkingGas;
  network: Network;
  /** The lines solved: one, or one a cylinder. */
  lines: CylinderLine[];
  /** Where the mouths breathe, or the inlet of the chamber that they stand in. */
  feed: OpenAir;
  /** What all mouths stand in, where there is one. */
  chamber?: Volume;
  /** Where the exhaust ends. */
  outside: OpenAir;
  /** Joints whose other pipes are echoes. */
  collectors: Collector[];
  /** Crank angle at which cycles start and end: intake closing of the first cylinder [deg]. */
  start: number;
}

/** Which cylinders are solved. */
export type Solved = 'one' | 'all';

/** State of the exhaust before the first cycle; forgotten within a few. */
const START_EXHAUST_TEMPERATURE = 800;
const START_CHARGE_TEMPERATURE = 350;

/** Cylinders that breathe from one chamber are solved together. */
const solvedOf = ({ intake }: EngineSpecification): Solved => (intake.chamber ? 'all' : 'one');

export function engineModel(
  spec: EngineSpecification,
  solved: Solved = solvedOf(spec),
): EngineModel {
  const working = workingGas(spec);
  const { gas } = working;
  const feed = new OpenAir(gas, spec.intake.feed);
  const outside = new OpenAir(gas, spec.ambient);
  const start = wrapAngle(liftCurve(spec.intake.valve.lift).close);
  const count = solved === 'one' ? 1 : spec.cylinder.count;
  const lines = Array.from({ length: count }, (_, j) =>
    cylinderLine(ofCylinder(spec, j), working, (j * CYCLE) / spec.cylinder.count, start),
  );
  const box = chamberOf(spec, feed, gas);
  const nodes = lines.flatMap((line, j) =>
    lineNodes(ofCylinder(spec, j), line, box?.volume ?? feed, gas),
  );
  const out = exhaustEnds(spec, lines, outside, solved);
  const ducts = lines.flatMap((line) => [line.trumpet, line.runner, line.primary]);
  fillDucts(spec, gas, lines, out.tails);
  return {
    spec,
    working,
    network: new Network({
      gas,
      ducts: [...ducts, ...out.tails, ...(box?.ducts ?? [])],
      nodes: [...nodes, ...out.nodes, ...(box?.nodes ?? [])],
      volumes: [...lines.map((line) => line.cylinder), ...(box ? [box.volume] : [])],
      courant: spec.numerics.courant,
      pipeHeat: spec.pipeHeat,
      limiter: LIMITERS[spec.numerics.limiter as LimiterName],
      flux: spec.numerics.flux as FluxName,
    }),
    lines,
    feed,
    ...(box && { chamber: box.volume }),
    outside,
    collectors: out.collectors,
    start,
  };
}

/** The chamber that the mouths stand in, full of the feed's air; undefined where there is none. */
function chamberOf({ intake, numerics }: EngineSpecification, feed: OpenAir, gas: Gas) {
  if (!intake.chamber) return undefined;
  const box = chamberParts(intake.chamber, feed, feedAir(intake, gas), numerics.intakeCell);
  for (const part of [box.volume, ...box.ducts]) part.fill(gas, intake.feed);
  return box;
}

/** Still air of the feed. */
function feedAir({ feed: { pressure, temperature } }: IntakeSpecification, gas: Gas) {
  return {
    density: pressure / (gas.rAir * temperature),
    soundSpeed: gas.soundSpeed(temperature, 0, 0),
  };
}

/** The engine as one of its cylinders sees it: with that cylinder's own trumpet. */
function ofCylinder(spec: EngineSpecification, j: number): EngineSpecification {
  const length = spec.intake.trumpetLengths?.[j];
  if (length === undefined) return spec;
  return { ...spec, intake: { ...spec.intake, trumpet: { ...spec.intake.trumpet, length } } };
}

function cylinderLine(
  spec: EngineSpecification,
  working: WorkingGas,
  phase: number,
  start: number,
): CylinderLine {
  const { intake, exhaust, cylinder, combustion, numerics } = spec;
  const intakeLift = liftCurve(intake.valve.lift);
  const exhaustLift = liftCurve(exhaust.valve.lift);
  const body = new Cylinder(
    {
      name: 'cylinder',
      crank: cylinder,
      wallTemperature: cylinder.wallTemperature,
      burn: wiebeBurn(combustion.burn50, combustion.burnDuration),
      fuelHeat: working.fuelHeat,
      shut: { from: wrapAngle(intakeLift.close), to: exhaustLift.open },
      phase,
    },
    start,
  );
  body.fill(working.gas, {
    pressure: intake.feed.pressure,
    temperature: START_CHARGE_TEMPERATURE,
    burned: 0.05,
  });
  const into = intakeDucts(intake, numerics.intakeCell);
  const { primary } = exhaustDucts(exhaust, numerics.exhaustCell);
  return {
    cylinder: body,
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

/** Mouth, throttle plate and both valves of one line. */
function lineNodes(
  spec: EngineSpecification,
  line: CylinderLine,
  feed: OpenAir | Volume,
  gas: Gas,
): Node[] {
  const { intake, exhaust } = spec;
  const inArea = effectiveValveArea(intake.valve, portLoss(intake.port));
  const outArea = effectiveValveArea(exhaust.valve, portLoss(exhaust.port));
  const { cylinder, phase } = line;
  return [
    mouthNode(intake, line.mouth, feed, gas),
    plateNode(intake.throttle, new DuctEnd(line.trumpet, 'high'), line.behindPlate),
    valve(line.intakeValve, cylinder, (angle) => inArea(line.intakeLift.lift(angle)), phase),
    valve(line.exhaustValve, cylinder, (angle) => outArea(line.exhaustLift.lift(angle)), phase),
  ];
}

/** Air without inertia, where a scenario says so, is a constant pressure. */
function mouthNode(
  intake: IntakeSpecification,
  end: DuctEnd,
  feed: OpenAir | Volume,
  gas: Gas,
): Node {
  const loss = mouthLoss(intake);
  if (mouthInertia(intake) <= 0) return openEnd(end, feed, loss);
  return mouth(end, feed, intakeMouth(intake, feedAir(intake, gas)), loss);
}

/** Joints, tails and open ends of the exhaust. */
function exhaustEnds(
  spec: EngineSpecification,
  lines: readonly CylinderLine[],
  outside: OpenAir,
  solved: Solved,
): { nodes: Node[]; tails: Duct[]; collectors: Collector[] } {
  const { exhaust, numerics } = spec;
  const pipes = lines.map((line) => new DuctEnd(line.primary, 'high'));
  const loss = exhaust.silencerLoss;
  const makeTail = () => exhaustDucts(exhaust, numerics.exhaustCell).tail;
  if (!makeTail()) {
    return {
      nodes: pipes.map((pipe) => openEnd(pipe, outside, 0, loss)),
      tails: [],
      collectors: [],
    };
  }
  const groups = solved === 'one' ? [pipes] : groupsOf(pipes, exhaust.joined);
  const tails: Duct[] = [];
  const collectors: Collector[] = [];
  const nodes = groups.flatMap((group) => {
    const tail = makeTail()!;
    tails.push(tail);
    const low = new DuctEnd(tail, 'low');
    const open = openEnd(new DuctEnd(tail, 'high'), outside, 0, loss);
    if (exhaust.joined === 1) return [areaStep(group[0]!, low), open];
    if (solved === 'all') return [junction([...group, low]), open];
    const joint = collector(group[0]!, exhaust.joined, [low]);
    collectors.push(joint);
    return [joint, open];
  });
  return { nodes, tails, collectors };
}

/** Pipes that meet: those that fire evenly, every so many cylinders of the firing order. */
function groupsOf<T>(pipes: readonly T[], joined: number): T[][] {
  const groups = pipes.length / joined;
  return Array.from({ length: groups }, (_, g) => pipes.filter((_pipe, j) => j % groups === g));
}

function fillDucts(
  spec: EngineSpecification,
  gas: Gas,
  lines: readonly CylinderLine[],
  tails: readonly Duct[],
): void {
  const hot = {
    pressure: spec.ambient.pressure,
    temperature: START_EXHAUST_TEMPERATURE,
    burned: 1,
  };
  for (const line of lines) {
    line.trumpet.fill(gas, spec.intake.feed);
    line.runner.fill(gas, spec.intake.feed);
    line.primary.fill(gas, hot);
  }
  for (const tail of tails) tail.fill(gas, hot);
}
