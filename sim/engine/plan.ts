/**
 * From a resolved engine to the plan of a network: every cylinder that differs from the others, with its
 * intake and exhaust (manifolds.ts), or all of them where they breathe from one chamber. The plan holds
 * for every speed.
 */
import { DuctEnd } from '../boundary/ductEnd.ts';
import { type Collector, mouth, type Node, openEnd, valve } from '../boundary/node.ts';
import { OpenAir, type Volume } from '../boundary/reservoir.ts';
import { wrapAngle } from '../crankAngle.ts';
import { effectiveValveArea } from '../cylinder/valveFlow.ts';
import { liftCurve } from '../cylinder/valveLift.ts';
import type { Duct } from '../duct/duct.ts';
import { firings } from '../firings.ts';
import type { Gas } from '../gas/gas.ts';
import type { EngineSpecification, IntakeSpecification } from '../specification.ts';
import { type Bar, barParts } from './bars.ts';
import { chamberParts, plateNode } from './chamber.ts';
import { type CylinderLine, cylinderLine } from './cylinderLine.ts';
import { exhaustEnds } from './exhaustEnds.ts';
import { intakeMouth, mouthInertia, mouthLoss, portLoss } from './intakeDucts.ts';
import { kindsOf } from './manifolds.ts';
import { Network } from './network.ts';
import { type FluxName, LIMITERS, type LimiterName } from './numerics.ts';
import { type WorkingGas, workingGas } from './workingGas.ts';

export interface EngineModel {
  spec: EngineSpecification;
  working: WorkingGas;
  network: Network;
  /** The lines solved, in the order they fire; that of the first of the firing order leads. */
  lines: CylinderLine[];
  /** Where the mouths breathe, or the inlet of the chamber that they stand in. */
  feed: OpenAir;
  /** What the mouths stand in, where there is one, the lead's of two: the part of it that its inlet opens into. */
  chamber?: Volume;
  /** The pipe that feeds it, from its mouth on. */
  inlet?: Duct;
  /** What joins the runners, in the order of the engine. */
  bars: readonly Bar[];
  /** Where the exhaust ends. */
  outside: OpenAir;
  /** The plates that the pedal moves, all alike: of the bodies, or that before each chamber. */
  plates: readonly Node[];
  /** Joints whose other pipes are echoes. */
  collectors: Collector[];
  /** Crank angle at which cycles start and end: intake closing of the first cylinder [deg]. */
  start: number;
}

/** Which cylinders are solved: of those that do alike one, or all. */
export type Solved = 'unlike' | 'all';

/** State of the exhaust before the first cycle; forgotten within a few. */
const START_EXHAUST_TEMPERATURE = 800;

/** Cylinders that breathe from one chamber, or that a bar joins, are solved together. */
const solvedOf = ({ intake }: EngineSpecification): Solved =>
  intake.chamber || intake.bars ? 'all' : 'unlike';

export function engineModel(
  spec: EngineSpecification,
  solved: Solved = solvedOf(spec),
): EngineModel {
  const working = workingGas(spec);
  const { gas } = working;
  const feed = new OpenAir(gas, spec.intake.feed);
  const outside = new OpenAir(gas, spec.ambient);
  const start = wrapAngle(liftCurve(spec.intake.valve.lift).close);
  const like = likeOf(spec, solved);
  const turns = firings(spec).filter(({ number }) => like.has(number));
  const lines = turns.map((turn) =>
    cylinderLine(ofCylinder(spec, turn.place), working, turn, like.get(turn.number)!, start),
  );
  const box = chamberOf(spec, feed, gas);
  const nodes = lines.flatMap((line, i) =>
    lineNodes(ofCylinder(spec, turns[i]!.place), line, box?.around(turns[i]!.place) ?? feed, gas),
  );
  const primaries = new Map(
    turns.map(({ number }, i) => [number, new DuctEnd(lines[i]!.primary, 'high')]),
  );
  const out = exhaustEnds(spec, primaries, outside, solved === 'all');
  const runnerOf = (place: number) =>
    lines[turns.findIndex((turn) => turn.place === place)]!.runner;
  const bars = filledBars(spec, feed, gas, runnerOf);
  fillDucts(spec, gas, lines, out.pipes);
  const own = {
    ducts: [...lines.flatMap((line) => [line.trumpet, line.runner, line.primary]), ...out.pipes],
    nodes: [...nodes, ...out.nodes],
    volumes: lines.map((line) => line.cylinder),
  };
  return {
    spec,
    working,
    bars,
    network: networkOf(spec, { gas, ...joined([own, ...(box ? [box] : []), ...bars]) }),
    lines,
    feed,
    ...(box && { chamber: box.atInlet, inlet: box.inlet }),
    outside,
    plates:
      box && box.plates.length > 0
        ? box.plates
        : nodes.filter(({ kind }) => kind === 'constriction'),
    collectors: out.collectors,
    start,
  };
}

const joined = (parts: readonly Joinable[]): Joinable => ({
  ducts: parts.flatMap((part) => part.ducts),
  nodes: parts.flatMap((part) => part.nodes),
  volumes: parts.flatMap((part) => part.volumes),
});

/** The bars with their hoses, full of air at the pressure each is wanted at. */
function filledBars(
  spec: EngineSpecification,
  feed: OpenAir,
  gas: Gas,
  runnerOf: (place: number) => Duct,
): Bar[] {
  return (spec.intake.bars ?? []).map((bar) => {
    const parts = barParts(bar, spec, feed, runnerOf);
    const state = { ...spec.intake.feed, pressure: bar.at.pressure };
    for (const part of [...parts.ducts, ...parts.volumes]) part.fill(gas, state);
    return parts;
  });
}

type Parts = Pick<ConstructorParameters<typeof Network>[0], 'gas' | 'ducts' | 'nodes' | 'volumes'>;

type Joinable = Required<Omit<Parts, 'gas'>>;

function networkOf({ numerics, pipeHeat }: EngineSpecification, parts: Parts): Network {
  const { courant, limiter, flux } = numerics;
  return new Network({
    ...parts,
    courant,
    pipeHeat,
    limiter: LIMITERS[limiter as LimiterName],
    flux: flux as FluxName,
  });
}

/** The numbers of the cylinders that are solved, each with all that it stands for. */
function likeOf(spec: EngineSpecification, solved: Solved): Map<number, readonly number[]> {
  if (solved === 'all') return new Map(firings(spec).map(({ number }) => [number, [number]]));
  return new Map(kindsOf(spec).flatMap(({ like }) => [...like]));
}

/** The chamber that the mouths stand in, full of the feed's air; undefined where there is none. */
function chamberOf({ intake, numerics }: EngineSpecification, feed: OpenAir, gas: Gas) {
  if (!intake.chamber) return undefined;
  const box = chamberParts(intake.chamber, feed, feedAir(intake, gas), numerics.intakeCell);
  for (const part of [...box.volumes, ...box.ducts]) part.fill(gas, intake.feed);
  return box;
}

/** Still air of the feed. */
function feedAir({ feed: { pressure, temperature } }: IntakeSpecification, gas: Gas) {
  return {
    density: pressure / (gas.rAir * temperature),
    soundSpeed: gas.soundSpeed(temperature, 0, 0),
  };
}

/** The engine as one of its cylinders sees it: with that cylinder's own trumpet, plate and drilling. */
function ofCylinder(spec: EngineSpecification, j: number): EngineSpecification {
  const { intake } = spec;
  const { trumpetLengths, throttleAngles, bleedBores } = intake;
  if (!trumpetLengths && !throttleAngles && !bleedBores) return spec;
  const trumpet = { ...intake.trumpet, length: trumpetLengths?.[j] ?? intake.trumpet.length };
  const throttle = {
    ...intake.throttle,
    angle: throttleAngles?.[j] ?? intake.throttle.angle,
    ...(bleedBores && { bleed: { bore: bleedBores[j]!, open: 1 } }),
  };
  return { ...spec, intake: { ...intake, trumpet, throttle } };
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

function fillDucts(
  spec: EngineSpecification,
  gas: Gas,
  lines: readonly CylinderLine[],
  pipes: readonly Duct[],
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
  for (const pipe of pipes) pipe.fill(gas, hot);
}
