/** Every size of plenum and box comes to the place of the engine that it is of. */
import { expect, it } from 'vitest';
import { portVolume } from '../../sim/decision/portFilling.ts';
import { inBox } from '../../sim/study/airbox/fitted.ts';
import { onPlenum } from '../../sim/study/plenum/fitted.ts';
import { demo } from '../scenario.ts';

const { engine, plenum, airbox, mouths } = demo('hill-climb');

it('a plenum', () => {
  const sizes = {
    ...{ volume: 0.0021, runnerLength: 0.3, runnerDiameter: 0.041, mouthRadius: 0.009 },
    ...{ runnerTemperature: 321, inletLength: 0.44, inletDiameter: 0.066, inletLoss: 1.7 },
  };
  const { intake } = onPlenum(engine, { ...plenum, ...sizes }, 33);
  const { chamber, trumpet, runner, throttle, port } = intake;
  expect(chamber).toMatchObject({ volume: 0.0021, inletLoss: 1.7, throttle: { angle: 33 } });
  expect(chamber!.throttle!.bore).toBe(plenum.throttle.bore);
  expect(chamber!.inlet).toMatchObject({
    length: 0.44,
    outerDiameter: 0.066,
    innerDiameter: 0.066,
  });
  expect(trumpet.length + throttle.length + runner.length).toBeCloseTo(0.3, 12);
  for (const pipe of [trumpet, runner]) {
    expect(pipe).toMatchObject({
      outerDiameter: 0.041,
      innerDiameter: 0.041,
      wallTemperature: 321,
    });
  }
  expect(trumpet.bellmouth).toMatchObject({ depth: 0.009, overhang: 0.009 });
  expect(throttle).toMatchObject({ bore: 0.041, angle: 90, shaftDiameter: 0, openLoss: 0 });
  expect(port).toBe(engine.intake.port);
});

it('a box', () => {
  const sizes = { volume: 0.006, snorkelLength: 0.2, snorkelDiameter: 0.07, filterLoss: 3 };
  const { intake } = inBox(engine, { ...airbox, ...sizes });
  expect(intake.chamber).toMatchObject({ volume: 0.006, inletLoss: 3, row: airbox.row });
  expect(intake.chamber!.inlet).toMatchObject({
    length: 0.2,
    outerDiameter: 0.07,
    innerDiameter: 0.07,
  });
  expect(intake.chamber!.throttle).toBeUndefined();
  expect(intake.trumpet).toBe(engine.intake.trumpet);
  expect(portVolume({ ...engine, intake })).toBe(portVolume(engine));
});

it('what is usual: 1.5 and 4 of the swept volume, 45 and 30 m/s, a row in the firing order', () => {
  const swept = 4 * (Math.PI / 4) * 0.086 ** 2 * 0.086;
  const flow = (swept * 8600) / 120;
  expect(plenum.given || airbox.given).toBe(false);
  expect(plenum.volume).toBeCloseTo(1.5 * swept, 9);
  expect(airbox.volume).toBeCloseTo(4 * swept, 9);
  expect(plenum.throttle.bore).toBeCloseTo(Math.sqrt((4 * flow) / (Math.PI * 45)), 9);
  expect(airbox.snorkelDiameter).toBeCloseTo(Math.sqrt((4 * flow) / (Math.PI * 30)), 9);
  // 1-3-4-2, fed at the end of cylinder 1; 1.15 bores apart.
  expect(plenum.row).toMatchObject({ places: [0, 2, 3, 1], inlet: 0 });
  expect(plenum.row!.pitch).toBeCloseTo(1.15 * 0.086, 9);
  expect(mouths.mouths).toHaveLength(4);
  // One cylinder leaves gaps: its one throttle is as wide as its body.
  const single = demo('sprint-single');
  expect(single.plenum.throttle.bore).toBeCloseTo(single.engine.intake.throttle.bore, 9);
  expect(single.plenum.row).toBeUndefined();
});
