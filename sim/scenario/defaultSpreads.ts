/**
 * How far a value is likely to be off where the file does not say: half-widths by the tool that a
 * builder reads it with. All are common practice without a source unless `why` names one.
 *
 * A half-width in per cent is of the value. Rows stand for keys of a file, or for defaults that were
 * taken in their place.
 */

export interface DefaultSpread {
  /** The key; `*` stands for one step of the path. */
  path: string;
  /** Half-width with its unit, or in per cent of the value. */
  half: string;
  /** What it comes from. */
  why: string;
}

const row = (path: string, half: string, why: string): DefaultSpread => ({ path, half, why });

export const DEFAULT_SPREADS: readonly DefaultSpread[] = [
  row('ambient.pressure', '3 mbar', 'weather over a day, and the barometer'),
  row('ambient.altitude', '30 m', 'map, and the weather in place of a barometer'),
  row('ambient.temperature', '3 K', 'air at the mouths is not air in the shade'),
  row('ambient.humidity', '0.15', 'weather report'),
  row('engine.bore', '0.02 mm', 'bore gauge'),
  row('engine.stroke', '0.1 mm', 'dial gauge'),
  row('engine.rod', '0.2 mm', 'vernier'),
  row('engine.compressionRatio', '0.2', 'burette and gasket'),
  row('engine.wallTemperature', '40 K', 'nobody measures it'),
  row('intake.feed.pressure', '20 mbar', 'boost gauge'),
  row('intake.feed.temperature', '8 K', 'thermometer behind a cooler'),
  row('intake.trumpet.diameter*', '0.2 mm', 'vernier in a spun tube'),
  row('intake.trumpet.bellmouth.radius', '1 mm', 'radius gauge at a lip'),
  row('intake.trumpet.bellmouth.depth', '1 mm', 'drawing against the part'),
  row('intake.trumpet.bellmouth.overhang', '1 mm', 'drawing against the part'),
  row('intake.trumpet.bellmouth.entryLoss', '70 %', 'handbooks differ two to four times'),
  row('intake.trumpet.bellmouth.endCorrection', '0.1', 'no table for a flared mouth was found'),
  row('intake.throttle.length', '0.5 mm', 'vernier'),
  row('intake.throttle.bore', '0.1 mm', 'vernier'),
  row('intake.throttle.openLoss', '40 %', 'shaft and plate by handbook'),
  row('*.port.length', '3 mm', 'soft wire along a bend'),
  row('*.port.diameter*', '0.4 mm', 'silicone cast'),
  row('*.port.wallTemperature', '25 K', 'nobody measures it'),
  row('intake.runner.length', '1 mm', 'drawing against the part'),
  row('intake.runner.wallTemperature', '15 K', 'contact thermometer'),
  row('*.valves.seatDiameter', '0.2 mm', 'vernier inside a seat'),
  row('*.valves.lift.open', '2 deg', 'degree wheel, chain and check lift'),
  row('*.valves.lift.close', '2 deg', 'degree wheel, chain and check lift'),
  row('*.valves.lift.centre', '2 deg', 'degree wheel and chain'),
  row('*.valves.lift.duration', '2 deg', 'check lift'),
  row('*.valves.lift.maximum', '0.1 mm', 'dial gauge and clearance'),
  row('*.valves.flowBench.depression', '6 %', 'benches differ by 3 % in flow'),
  row('*.valves.flowCoefficient', '5 %', 'bench and reference area'),
  row('exhaust.primary.length', '10 mm', 'tape along bends'),
  row('exhaust.primary.diameter*', '0.5 mm', 'outside less twice the wall'),
  row('exhaust.primary.bendLoss', '50 %', 'pipe handbook'),
  row('exhaust.primary.wallTemperature', '100 K', 'temperature paint'),
  row('exhaust.tail.length', '30 mm', 'tape along bends'),
  row('exhaust.tail.diameter*', '1 mm', 'outside less twice the wall'),
  row('exhaust.tail.wallTemperature', '100 K', 'temperature paint'),
  row('exhaust.silencerLoss', '40 %', 'back pressure at one speed'),
  row('fuel.lambda', '0.03', 'sensor'),
  row('fuel.burn50', '3 deg', 'nobody measures it without an indicator'),
  row('fuel.burnDuration', '4 deg', 'nobody measures it without an indicator'),
];

/** Doubt in typical flow coefficients taken by default. */
export const TYPICAL_FLOW_SPREAD: DefaultSpread = row(
  '*.valves.flowCoefficient',
  '12 %',
  'typical valve: the band of Heywood (1988) fig. 6-14, from memory, 0.06 of 0.5',
);

/** The default half-width of a key, if it has one. */
export function defaultSpread(path: string): DefaultSpread | undefined {
  return DEFAULT_SPREADS.find((spread) => matches(spread.path, path));
}

/** `*` alone stands for one step; at the end of a step for the rest of it. */
function matches(pattern: string, path: string): boolean {
  const [wanted, steps] = [pattern.split('.'), path.split('.')];
  return (
    wanted.length === steps.length &&
    wanted.every((step, i) =>
      step.endsWith('*') ? steps[i]!.startsWith(step.slice(0, -1)) : step === steps[i],
    )
  );
}
