/**
 * Bores that meet along the way of the gas. What is computed is what the file says; a ratio outside
 * those of most engines, all common practice without a source, is most often a slip of unit or
 * decimal point.
 */
import { quantityToText } from '../quantity.ts';
import type { ScenarioView } from '../schema.ts';
import type { Place } from '../view.ts';
import { diameterAt, type PipeView } from './pipe.ts';
import type { ValvesView } from './valve.ts';
import { seatOf } from './valveHead.ts';

type Range = readonly [low: number, high: number];

/** Bore over the bore that it meets, in the direction of the valve. */
const STEP: Range = [0.9, 1.1];
/** Bore at the air end over bore at the valve end. */
const TAPER = {
  trumpet: [0.95, 1.6],
  runner: [0.9, 1.4],
  port: [0.8, 1.4],
  primary: [0.85, 1.4],
  secondary: [0.85, 1.4],
  collector: [0.5, 1.1],
  tail: [0.7, 1.6],
} satisfies Record<string, Range>;
/** Bore of a port at the valves over the diameter of one seat of their common area. */
const PORT_TO_SEAT: Range = [0.7, 1.3];
/** Bore of the primary over that of the exhaust port; of the tail over that of the primary. */
const PRIMARY_TO_PORT: Range = [0.85, 1.5];
const TAIL_TO_PRIMARY: Range = [0.9, 2.2];
/** Bore of the throttle body over that of the cylinder. */
const THROTTLE_TO_CYLINDER: Range = [0.35, 0.75];
/** Smaller half-axis of a flare over the bore below it. */
const FLARE_TO_BORE: Range = [0.05, 0.6];

export function checkFlowPath({ engine, intake, exhaust }: ScenarioView): void {
  const { trumpet, throttle, runner, port } = intake;
  const head = runner.here.present ? runner : port;
  const body = throttle.bore.given;
  step(trumpet.here, 'the throttle body', diameterAt(trumpet, 'ValveEnd'), body);
  step(head.here, 'the throttle body', diameterAt(head, 'AirEnd'), body);
  if (runner.here.present) {
    step(port.here, 'the runner', diameterAt(port, 'AirEnd'), diameterAt(runner, 'ValveEnd'));
  }
  compare(throttle.bore, body, engine.bore.given, THROTTLE_TO_CYLINDER, "the cylinder's bore");
  const { radius, depth, overhang } = trumpet.bellmouth;
  const flare = radius.given ?? Math.min(depth.given!, overhang.given!);
  const bore = diameterAt(trumpet, 'AirEnd');
  if (flare > 0) compare(trumpet.bellmouth.here, flare, bore, FLARE_TO_BORE, 'the bore below it');
  tapers({ trumpet: trumpet, runner, port });
  portToSeat(intake.valves, port);
  portToSeat(exhaust.valves, exhaust.port);
  const flange = diameterAt(exhaust.port, 'AirEnd');
  const { primary, step: widened, secondary, collector, tail } = exhaust;
  const joint = diameterAt(widened.here.present ? widened : primary, 'AirEnd');
  const first = collector.here.present ? collector : tail;
  tapers({ port: exhaust.port, primary, secondary, collector, tail });
  step(tail.here, 'the collector', diameterAt(tail, 'ValveEnd'), diameterAt(collector, 'AirEnd'));
  compare(primary.here, diameterAt(primary, 'ValveEnd'), flange, PRIMARY_TO_PORT, 'the port');
  for (const pipe of [secondary, first]) {
    compare(pipe.here, diameterAt(pipe, 'ValveEnd'), joint, TAIL_TO_PRIMARY, 'the primary');
  }
}

function step(at: Place, where: string, diameter?: number, bore?: number): void {
  if (!outside(diameter! / bore!, STEP)) return;
  at.warn(`steps at ${where}: ${sizes(' against ', diameter!, bore!)}; check that this is so`);
}

function tapers(pipes: Partial<Record<keyof typeof TAPER, PipeView>>): void {
  for (const [name, pipe] of Object.entries(pipes)) {
    const {
      diameterAirEnd: air,
      diameterValveEnd: valve,
      here,
    } = pipe as PipeView & { here: Place };
    const range = TAPER[name as keyof typeof TAPER];
    if (!outside(air.given! / valve.given!, range)) continue;
    here.warn(`tapers from ${sizes(' to ', air.given!, valve.given!)}; check that this is so`);
  }
}

function portToSeat(valves: ValvesView, port: PipeView & { here: Place }): void {
  const common = seatOf(valves)! * Math.sqrt(valves.count.given!);
  compare(
    port.here,
    diameterAt(port, 'ValveEnd'),
    common,
    PORT_TO_SEAT,
    'one seat with the area of all',
  );
}

function compare(
  at: Place,
  size: number | undefined,
  other: number | undefined,
  range: Range,
  what: string,
): void {
  const ratio = size! / other!;
  if (!outside(ratio, range)) return;
  at.warn(
    `${quantityToText(size!, 'length')} is ${ratio.toFixed(2)} of ${what}, ${quantityToText(other!, 'length')}; most engines lie within ${range[0]} to ${range[1]}`,
  );
}

/** False too where a figure is missing. */
const outside = (ratio: number, [low, high]: Range) => ratio < low - 1e-9 || ratio > high + 1e-9;

const sizes = (between: string, ...diameters: number[]) =>
  diameters.map((size) => quantityToText(size, 'length')).join(between);
