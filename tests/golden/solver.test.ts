/**
 * The figures of cheap points to the last bit: a change of the solver that is meant to change nothing
 * shows here. One that is meant to change figures renews them (`npx vitest run tests/golden/solver
 * -u`) and says by how much. Bits are those of every runtime (bytes.test.ts).
 */
import { describe, expect, test } from 'vitest';
import { STATIONS } from '../../sim/engine/trace.ts';
import { readScenario } from '../../sim/scenario/read.ts';
import { withShare } from '../../sim/study/inject/compute.ts';
import { isFailure, runJob } from '../../sim/sweep/runner.ts';
import { withLength } from '../../sim/sweep/sweep.ts';
import { TASKS } from '../../sim/sweep/tasks.ts';
import { cheapText, DEMOS, type GoldenDemo, UNEVEN } from './cheap.ts';
import { indented } from './readable.ts';

const { trace } = TASKS;
const point = runJob;

const golden = (name: string, figures: unknown) =>
  expect(`${indented(figures)}\n`).toMatchFileSnapshot(`./solver/${name}.json`);

const cheap = (demo: GoldenDemo) => readScenario(cheapText(demo), demo);

test.each([...DEMOS, ...UNEVEN])('%s', async (demo) => {
  const { engine, speeds, sweep } = cheap(demo);
  const outcomes = [engine.intake.trumpet.length, sweep.lengths.at(-1)!].flatMap((length) =>
    [speeds[1]!, speeds.at(-1)!].map((speed) => ({
      length,
      ...point({ engine: withLength(engine, length), speed }),
    })),
  );
  expect(outcomes.some(isFailure)).toBe(false);
  await golden(demo, outcomes);
});

describe('beyond', () => {
  test('a spray from both injectors', async () => {
    const { engine, injectors, speeds } = cheap('endurance-six');
    await golden('spray', point({ engine: withShare(engine, injectors!, 0.5), speed: speeds[2]! }));
  });

  test('a plate half shut', async () => {
    const { engine } = cheap('hill-climb');
    const throttle = { ...engine.intake.throttle, angle: 40 };
    const shut = { ...engine, intake: { ...engine.intake, throttle } };
    await golden('part-throttle', point({ engine: shut, speed: 5000 }));
  });

  test('a trace, every 45 degrees or so', async () => {
    const { engine, speeds } = cheap('sprint-single');
    const whole = trace({ engine, speed: speeds[1]!, stations: STATIONS });
    if ('failure' in whole) throw new Error(whole.failure);
    const few = <T>(rows: readonly T[]) => rows.filter((_, i) => i % 45 === 0);
    await golden('trace', {
      crankAngle: few(whole.crankAngle),
      cylinderPressure: few(whole.cylinderPressure),
      stations: whole.stations.map(({ name, pressure, velocity, massFlow, temperature }) => ({
        name,
        pressure: few(pressure),
        velocity: few(velocity),
        massFlow: few(massFlow),
        temperature: few(temperature),
      })),
      wave: { distance: few(whole.wave.distance), pressure: few(whole.wave.pressure.map(few)) },
    });
  });
});
