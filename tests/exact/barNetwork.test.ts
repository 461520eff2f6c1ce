/**
 * Hoses, bar and sensor as ducts of the solver's own network against the exact linear theory of thin lines
 * (acoustics/line.ts, whose published values are in tests/prove/pressureLines.ts): runners whose pressure is
 * given, as small swings; and what large ones do that no linear theory has.
 */
import { describe, expect, it } from 'vitest';
import { mean, swing } from '../../sim/acoustics/barReading.ts';
import { magnitude } from '../../sim/acoustics/complex.ts';
import { harmonicsOf } from '../../sim/acoustics/fourierSeries.ts';
import { periodicBar } from '../../sim/acoustics/periodicBar.ts';
import { barLines, barResponse } from '../../sim/acoustics/pressureBar.ts';
import { airInHoses } from '../../sim/acoustics/restingAir.ts';
import { DuctEnd } from '../../sim/boundary/ductEnd.ts';
import { closedEnd } from '../../sim/boundary/node.ts';
import { OpenAir } from '../../sim/boundary/reservoir.ts';
import { barParts } from '../../sim/engine/bars.ts';
import { joinedCycle } from '../../sim/engine/joinedCycle.ts';
import { workingGas } from '../../sim/engine/workingGas.ts';
import { historyOf } from '../../sim/study/signal/history.ts';
import { barOf, shiftsOf } from '../../sim/study/signal/hoses.ts';
import { joinedBarOf } from '../../sim/study/signal/joined.ts';
import { coarse } from '../../sim/study/signal/tapped.ts';
import { network, pipe } from '../network.ts';
import { roadFour } from '../scenario.ts';

const { engine: fine, pressureBar } = roadFour();
const engine = { ...fine, numerics: coarse(fine.numerics) };
const { gas } = workingGas(engine);
const { temperature } = engine.ambient;
const PRESSURE = 57e3;
const N = 720;

/** Behind a plate at idle, every degree [Pa]. */
function idleHistory(): number[] {
  const { intake } = engine;
  const throttle = { ...intake.throttle, angle: 8.5 };
  const plates = { ...engine, intake: { ...intake, throttle } };
  const { crankAngle, cylinders } = joinedCycle(plates, 900);
  return historyOf(crankAngle, cylinders[0]!.pressure);
}

/** What the sensor reads over the last of some cycles, the runners alike and a firing apart [Pa]. */
function heard(spec: typeof pressureBar, history: readonly number[], speed: number, cycles = 12) {
  const at = { frequency: speed / 30, pressure: mean(history) };
  const runners = Array.from({ length: 4 }, () => pipe(0.18, 0.042, 3));
  const outside = new OpenAir(gas, engine.ambient);
  const bar = barParts(joinedBarOf(spec, 4, at), engine, outside, (place) => runners[place]!);
  for (const part of [...bar.ducts, ...bar.volumes])
    part.fill(gas, { pressure: at.pressure, temperature });
  const shut = runners.flatMap((runner) => [
    new DuctEnd(runner, 'low'),
    new DuctEnd(runner, 'high'),
  ]);
  const nodes = [...bar.nodes, ...shut.map(closedEnd)];
  const net = network([...bar.ducts, ...runners], nodes, { gas, volumes: bar.volumes });
  const each = Math.ceil(120 / speed / N / 5e-5);
  const read: number[] = [];
  for (let k = 0; k < cycles * N * each; k++) {
    runners.forEach((runner, i) => {
      const place = k / each - (i * N) / 4 + N;
      const [whole, part] = [Math.floor(place) % N, place % 1];
      const pressure = history[whole]! + part * (history[(whole + 1) % N]! - history[whole]!);
      runner.fill(gas, { pressure, temperature });
    });
    if (k >= (cycles - 1) * N * each && k % each === 0) read.push(bar.sensed());
    net.step({ crankAngle: 0, crankStep: 0, dt: 120 / speed / N / each });
  }
  return read;
}

/** As wide as its hoses and without loss there. */
const open = { ...pressureBar, jetBore: pressureBar.hoseBore, jetCoefficient: 1 };

/** Swing of the sensor over that of the runners, all in phase at the firing frequency [-]. */
function gain(spec: typeof pressureBar, frequency: number): { found: number; exact: number } {
  const sine = Array.from({ length: N }, (_, j) => PRESSURE + 10 * Math.sin((8 * Math.PI * j) / N));
  const found = harmonicsOf(heard(spec, sine, 30 * frequency, 15), 4)[3]!;
  const lines = barLines(barOf(spec), frequency, airInHoses(engine.ambient, PRESSURE));
  const exact = barResponse(lines, 0).bar.mul(lines.sensor).mul(4);
  return { found: magnitude(found) / 5, exact: magnitude(exact) };
}

describe('hoses without jets at small swings do what the exact theory says within 1 %', () => {
  const thin = { hoseBore: 0.002, sensorHoseBore: 0.002, jetBore: 0.002 };
  it.each([
    ['below, at and above what the bar of the demo rings at', open, [30, 80, 110, 160]],
    ['a bar as small as a piece of its hoses', { ...open, volume: 1e-6 }, [110]],
    ['a sensor that is no small room', { ...open, sensorVolume: 5e-6 }, [110]],
    ['hoses of 2 mm', { ...open, ...thin }, [80]],
  ] as const)('%s', (_, spec, frequencies) => {
    for (const frequency of frequencies) {
      const { found, exact } = gain(spec, frequency);
      expect(Math.abs(found / exact - 1), `${frequency} Hz`).toBeLessThan(0.01);
    }
  });
});

describe('the idle of the demo, jets and all', () => {
  const idle = idleHistory();
  const both = (scale: number, speed: number) => {
    const history = idle.map((p) => mean(idle) + scale * (p - mean(idle)));
    const read = heard(pressureBar, history, speed);
    const gases = airInHoses(engine.ambient, mean(history));
    const harmonics = harmonicsOf(history, 60);
    const runners = {
      mean: mean(history),
      harmonics,
      frequency: speed / 120,
      shifts: shiftsOf(4, 4),
    };
    const { sensor } = periodicBar(barOf(pressureBar), runners, gases, N);
    const offset = mean(read) - mean(history);
    return { ripple: swing(read), linear: swing(sensor), offset, runner: swing(history) };
  };

  // Of its overtones friction is that of the firing, and the linear theory has one resistance for a jet.
  it.each([900, 2400, 7000])(
    'agrees within 6 % where it is made to swing by 35 Pa, %d rpm',
    (speed) => {
      const { ripple, linear, offset, runner } = both(1 / 2000, speed);
      expect(Math.abs(ripple / linear - 1)).toBeLessThan(0.06);
      expect(Math.abs(offset)).toBeLessThan(0.01 * runner);
    },
  );

  it('does not as it is: jets rectify, and the mean of the bar is not the mean', () => {
    const { ripple, linear, offset, runner } = both(1, 900);
    expect(runner).toBeGreaterThan(60e3);
    expect(ripple).toBeLessThan(0.9 * linear);
    expect(offset).toBeGreaterThan(1e3);
  });
});
