/** A resolved scenario in the units and words of a builder, section by section. */
import { sweptVolume } from '../cylinder/crank.ts';
import { bandsOf, type Target } from '../decision/target.ts';
import type { Scenario } from '../scenario/resolve.ts';
import type {
  LiftSpecification,
  PipeSpecification,
  ValveFlowSpecification,
  ValveSpecification,
} from '../specification.ts';
import { INCH_OF_WATER } from '../units.ts';
import {
  brief,
  celsius,
  counted,
  fixed,
  millibars,
  millimetres,
  percent,
  rpm,
  rpmRange,
} from './figures.ts';

export interface Fact {
  label: string;
  text: string;
}

export interface FactSection {
  heading: string;
  facts: Fact[];
}

/** Everything that goes into the computation, as it was understood. */
export function scenarioFacts(scenario: Scenario): FactSection[] {
  return [
    { heading: 'Question', facts: questionFacts(scenario) },
    { heading: 'Air and engine', facts: engineFacts(scenario) },
    { heading: 'Intake', facts: intakeFacts(scenario) },
    { heading: 'Exhaust', facts: exhaustFacts(scenario) },
    { heading: 'Computation', facts: numericsFacts(scenario) },
  ];
}

function questionFacts(scenario: Scenario): Fact[] {
  const { engine, speeds, sweep } = scenario;
  const { lengths } = sweep;
  const [shortest, longest] = [lengths[0]!, lengths[lengths.length - 1]!].map(millimetres);
  return [
    ...targetFacts(scenario.target),
    { label: 'fitted now', text: millimetres(engine.intake.trumpet.length) },
    { label: 'lengths to try', text: `${shortest} to ${longest}, ${lengths.length} of them` },
    {
      label: 'speeds',
      text: `${rpmRange({ from: speeds[0]!, to: speeds[speeds.length - 1]! })}, ${speeds.length} of them`,
    },
    ...variedFacts(scenario),
    ...fitFacts(scenario),
    ...uncertaintyFacts(scenario),
  ];
}

function targetFacts(target: Target): Fact[] {
  const weights = target.weights
    ?.map(({ speed, weight }) => `${brief(weight)} at ${brief(speed, 6)}`)
    .join(', ');
  const bands = bandsOf(target).map((band) => {
    const weight = band.weight ?? 1;
    return rpmRange(band) + (weight === 1 ? '' : ` (counts ${brief(weight)})`);
  });
  const floors = (target.floors ?? []).map(({ speed, least, mostLossPercent }) => {
    const limits = [
      ...(least === undefined ? [] : [`at least ${brief(least)}`]),
      ...(mostLossPercent === undefined ? [] : [`at most ${brief(mostLossPercent)} % lost`]),
    ];
    return `${limits.join(' and ')} at ${rpm(speed)}`;
  });
  return [
    {
      label: bands.length > 1 ? 'bands' : 'band',
      text: bands.join(' and ') + (weights ? `, weights ${weights}` : ''),
    },
    ...(target.score ? [{ label: 'score', text: 'indicated torque' }] : []),
    ...(floors.length > 0 ? [{ label: 'floors', text: floors.join('; ') }] : []),
  ];
}

function variedFacts({ sweep }: Scenario): Fact[] {
  return (sweep.vary ?? []).map(({ path, texts }) => ({
    label: 'varied',
    text: `${path}: ${texts.join(', ')}`,
  }));
}

function fitFacts({ fit, engine }: Scenario): Fact[] {
  if (!fit) return [];
  const { facingWall } = engine.intake;
  const room = [
    ...(facingWall === undefined ? [] : [`${millimetres(facingWall)} from body face to wall`]),
    ...(fit.longest === undefined ? [] : [`longest trumpet ${millimetres(fit.longest)}`]),
  ];
  const saw = fit.cut ? `cut to +- ${millimetres(fit.tolerance)}` : 'not to be cut';
  return [
    ...(room.length > 0 ? [{ label: 'room', text: room.join(', ') }] : []),
    ...(fit.shelf.length > 0
      ? [{ label: 'shelf', text: `${fit.shelf.map(millimetres).join(', ')}; ${saw}` }]
      : []),
  ];
}

function uncertaintyFacts({ uncertainty }: Scenario): Fact[] {
  if (!uncertainty) return [];
  const { samples, seed, byTrade } = uncertainty;
  const origin = byTrade ? 'given or by trade sense' : 'as given';
  return [{ label: 'doubt', text: `${samples} samples of seed ${seed}, spreads ${origin}` }];
}

function engineFacts({ engine }: Scenario): Fact[] {
  const { ambient, cylinder, combustion } = engine;
  const swept = sweptVolume(cylinder) * cylinder.count * 1e6;
  return [
    {
      label: 'air',
      text: `${millibars(ambient.pressure)}, ${celsius(ambient.temperature)}, ${percent(100 * ambient.relativeHumidity, 0)} humidity`,
    },
    {
      label: 'cylinders',
      text: `${cylinder.count}, bore ${millimetres(cylinder.bore)}, stroke ${millimetres(cylinder.stroke)}, rod ${millimetres(cylinder.rodLength)}, ${fixed(swept, 0)} cc together`,
    },
    {
      label: 'chamber',
      text: `compression ${brief(cylinder.compressionRatio)} : 1, walls ${celsius(cylinder.wallTemperature)}`,
    },
    {
      label: 'burn',
      text: `${combustion.fuel}, lambda ${brief(combustion.lambda)}, half burned at ${deadCentreText(combustion.burn50, 0)}, 10 to 90 % in ${brief(combustion.burnDuration)} deg`,
    },
  ];
}

function intakeFacts({ engine }: Scenario): Fact[] {
  const { feed, trumpet, throttle, runner, port, valve } = engine.intake;
  const { depth, overhang, entryLoss, endCorrection } = trumpet.bellmouth;
  const flare =
    depth === 0
      ? 'plain cut end'
      : depth === overhang
        ? `radius ${millimetres(depth)}`
        : `${millimetres(depth)} deep, ${millimetres(overhang)} overhang`;
  return [
    { label: 'breathes', text: `${millibars(feed.pressure)}, ${celsius(feed.temperature)}` },
    { label: 'trumpet', text: pipeText(trumpet) },
    {
      label: 'mouth',
      text: `${flare}, entry loss ${brief(entryLoss, 3)}, end correction ${brief(endCorrection)} radii of the rim`,
    },
    {
      label: 'throttle body',
      text: `${millimetres(throttle.length)} long, bore ${millimetres(throttle.bore)}, shaft ${millimetres(throttle.shaftDiameter)} at ${millimetres(throttle.shaftPosition)}, plate at ${brief(throttle.angle)} deg (90 is wide open)`,
    },
    { label: 'runner', text: runner.length > 0 ? pipeText(runner) : 'none' },
    { label: 'port', text: pipeText(port) },
    ...valveFacts(valve, 'intake'),
  ];
}

function exhaustFacts({ engine }: Scenario): Fact[] {
  const { valve, port, primary, joined, tail, silencerLoss } = engine.exhaust;
  return [
    ...valveFacts(valve, 'exhaust'),
    { label: 'port', text: pipeText(port) },
    { label: 'primary', text: pipeText(primary) },
    { label: 'joined', text: joined > 1 ? `${joined} into one` : 'each on its own' },
    { label: 'tail', text: tail ? pipeText(tail) : 'none' },
    { label: 'silencer', text: `loss of ${counted(Number(brief(silencerLoss)), 'dynamic head')}` },
  ];
}

function numericsFacts({ engine }: Scenario): Fact[] {
  const { intakeCell, exhaustCell, courant, limiter, flux, settle, maximumCycles } =
    engine.numerics;
  return [
    {
      label: 'cells',
      text: `at most ${millimetres(intakeCell)} in the intake, ${millimetres(exhaustCell)} in the exhaust`,
    },
    { label: 'scheme', text: `${flux}, ${limiter}, Courant number ${brief(courant)}` },
    {
      label: 'settled',
      text: `when a cycle repeats within ${percent(100 * settle, 2)}; given up after ${maximumCycles} cycles`,
    },
  ];
}

/** Ends are named from the open air inwards, as in the file. */
function pipeText(pipe: PipeSpecification): string {
  const { outerDiameter, innerDiameter, length, wallTemperature, bendLoss } = pipe;
  const bore =
    outerDiameter === innerDiameter
      ? `bore ${millimetres(outerDiameter)}`
      : `bore ${millimetres(outerDiameter)} at the air end, ${millimetres(innerDiameter)} at the valve end`;
  const bends = bendLoss > 0 ? `, bends ${brief(bendLoss)} dynamic heads` : '';
  return `${millimetres(length)} long, ${bore}, wall ${celsius(wallTemperature)}${bends}`;
}

function valveFacts(valve: ValveSpecification, kind: 'intake' | 'exhaust'): Fact[] {
  return [
    { label: 'valves', text: `${valve.count} a cylinder, seat ${millimetres(valve.diameter)}` },
    { label: 'lift', text: liftText(valve.lift, kind) },
    { label: 'flow', text: flowText(valve.flow) },
  ];
}

function liftText(lift: LiftSpecification, kind: 'intake' | 'exhaust'): string {
  if (lift.kind === 'table') {
    const { angle } = lift;
    const top = Math.max(...lift.lift);
    const ends = `from ${brief(angle[0]!)} to ${brief(angle[angle.length - 1]!)} deg`;
    return `table of ${counted(angle.length, 'point')} ${ends}, maximum ${millimetres(top)}`;
  }
  const [opens, closes] = kind === 'intake' ? [360, 540] : [180, 360];
  return (
    `opens ${deadCentreText(lift.open, opens)}, closes ${deadCentreText(lift.close, closes)} ` +
    `at ${millimetres(lift.checkLift)}, maximum ${millimetres(lift.maximum)}`
  );
}

/** Crank angle [deg] counted from a dead centre: 28 deg BTDC. */
function deadCentreText(angle: number, deadCentre: number): string {
  const after = angle - deadCentre;
  const name = deadCentre % 360 === 0 ? 'TDC' : 'BDC';
  return `${brief(Math.abs(after))} deg ${after < 0 ? 'B' : 'A'}${name}`;
}

function flowText(flow: ValveFlowSpecification): string {
  if (flow.kind === 'coefficient') {
    const [first, last] = [flow.coefficient[0]!, flow.coefficient[flow.coefficient.length - 1]!];
    return `discharge coefficient ${brief(first, 3)} to ${brief(last, 3)} of the ${flow.reference} area`;
  }
  const most = Math.max(...flow.flow) / CUBIC_FOOT_PER_MINUTE;
  const depression = flow.depression / INCH_OF_WATER;
  return `flow bench, ${counted(flow.lift.length, 'point')} up to ${fixed(most, 0)} cfm at ${brief(depression, 3)} inH2O`;
}

/** [m^3/s]; exact: international foot of 0.3048 m. */
const CUBIC_FOOT_PER_MINUTE = 0.3048 ** 3 / 60;
