/** Ways of idle air computed with the engine: what is known of them. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { runSpeeds } from '../../sim/engine/point.ts';
import { NEAR } from '../../sim/study/idle/asking.ts';
import { joinedIdleOf } from '../../sim/study/idle/joined.ts';
import { type IdleState, STATES } from '../../sim/study/idle/need.ts';
import { coldEngine } from '../../sim/study/idle/settings.ts';
import { idleSentences } from '../../sim/study/idle/tell.ts';
import type { WayName } from '../../sim/study/idle/ways.ts';
import { throttled } from '../../sim/study/signal/tapped.ts';
import { type PointJob, runJob } from '../../sim/sweep/runner.ts';
import { type Computer, TASKS } from '../../sim/sweep/tasks.ts';
import { roadFour } from '../scenario.ts';

const { engine, pressureBar: bar, idle: spec } = roadFour();
let asked = 0;
let alone = 0;
const told = { total: 0, points: 0 };
const task = async (name: 'joined', job: never) => {
  asked++;
  return TASKS[name](job);
};
const run = async (job: PointJob) => {
  alone++;
  return runJob(job);
};
const computer = { run, task } as unknown as Computer;
const study = await joinedIdleOf({ engine, spec, bar }, computer, {
  onTotal: (total) => {
    told.total = total;
  },
  onPoint: () => {
    told.points++;
  },
});
const way = (name: WayName, state: IdleState = 'warm') =>
  study.joined.find((one) => one.name === name && one.state === state)!;
const result = (name: WayName) => study.ways.find((one) => one.name === name)!;

it('every way is computed warm and cold, without the load and with it, on few runs', () => {
  const names = ['ajar', 'bleeds', 'own', 'shared', 'one', 'driven'];
  const wanted = names.flatMap((name) => STATES.map((state) => `${name} ${state}`));
  expect(study.joined.map(({ name, state }) => `${name} ${state}`)).toEqual(wanted);
  // Some fifteen cycles of the engine each: of them the command takes its time.
  expect(asked).toBeLessThanOrEqual(40);
  expect(alone).toBeLessThanOrEqual(10);
  expect(told).toEqual({ total: asked + alone, points: asked + alone });
});

it('what follows is set until the engine draws what it wants, or is as far open as it goes', () => {
  for (const name of ['own', 'shared', 'one', 'driven'] as const) {
    for (const state of STATES) {
      const { air, wanted, setting, left } = way(name, state);
      if (setting.valve?.open === 1) expect(air).toBeLessThan(wanted);
      else expect(Math.abs(air / wanted - 1)).toBeLessThanOrEqual(NEAR);
      expect(left).toBeGreaterThanOrEqual(0);
    }
  }
  expect(result('own').enough).toBe(true);
  expect(result('driven').enough).toBe(true);
});

it('what nobody moves gives the cold engine no more than the warm one', () => {
  for (const name of ['ajar', 'bleeds'] as const) {
    expect(Math.abs(way(name).air / spec.air - 1)).toBeLessThanOrEqual(NEAR);
    expect(Math.abs(way(name, 'cold').air / way(name).air - 1)).toBeLessThan(0.05);
    expect(result(name).enough).toBe(false);
  }
});

describe('air into one cylinder', () => {
  it('leans that cylinder alone, cold as warm', () => {
    for (const state of STATES) {
      const { lambda } = way('one', state);
      expect(lambda.one).toBeGreaterThan(1.5);
      expect(lambda.others).toBeLessThan(0.85);
      expect((lambda.one + 3 * lambda.others) / 4).toBeCloseTo(1, 12);
    }
  });

  it('fills it, and then no more comes: it cannot carry the cold engine', () => {
    expect(result('one').enough).toBe(false);
    expect(result('one').reach).toBeLessThan(1.5);
  });
});

describe('a valve', () => {
  it('that pulses into the pressure bar adds ripple and offset to the signal, a separate bar no ripple', () => {
    const quiet = way('driven').signal!;
    expect(way('shared').signal!.ripple).toBeGreaterThan(quiet.ripple + bar.resolution);
    expect(way('shared').signal!.offset).toBeGreaterThan(quiet.offset + bar.resolution);
    for (const state of STATES) {
      const beside = way('driven', state).signal!.ripple;
      expect(way('own', state).signal!.ripple).toBeLessThan(beside + 100);
    }
  });

  it('that pulses more often swings the sensor less', () => {
    const swings = study.frequencies.map(({ sensor }) => sensor!);
    expect(swings.length).toBeGreaterThan(2);
    expect(swings).toEqual(swings.toSorted((a, b) => b - a));
    expect(swings.at(-1)).toBeGreaterThan(bar.resolution);
  });

  it('held open pulses nothing', () => {
    const { setting, signal } = way('shared', 'most');
    expect(setting.valve!.open).toBe(1);
    expect(signal!.ripple).toBeLessThan(way('driven', 'most').signal!.ripple + 500);
  });
});

describe('evenness', () => {
  it('a bar that joins the runners by wide nipples levels them', () => {
    for (const state of STATES) {
      expect(way('own', state).spread).toBeLessThan(0.95 * way('driven', state).spread);
    }
    expect(way('own').spread).toBeLessThan(0.6 * way('ajar').spread);
  });

  it('a nipple that is off sets its cylinder apart, more so behind small jets', () => {
    expect(way('shared').spread).toBeGreaterThan(2 * way('own').spread);
  });

  it('an error of a plate counts less the further plates are open', () => {
    const apart = STATES.map((state) => way('driven', state).spread);
    expect(apart).toEqual(apart.toSorted((a, b) => b - a));
  });

  it('what is recommended is the evenest that serves, at its worst', () => {
    expect(study.best!.name).toBe('own');
    const all = STATES.map((state) => way('own', state).spread);
    expect(study.best!.spread).toBe(Math.max(...all));
  });
});

describe('a spark that is late', () => {
  it('holds torque back, and sends more heat out with the exhaust, cold as warm', () => {
    expect(study.sparks.map(({ state }) => state)).toEqual(['warm', 'cold']);
    for (const { torque, share, best, late } of study.sparks) {
      expect(torque).toBeGreaterThan(0.5);
      expect(share).toBeGreaterThan(0.04);
      expect(share).toBeLessThan(0.12);
      expect(late - best).toBeGreaterThan(40);
      expect(late - best).toBeLessThan(200);
    }
  });

  it('is measured from where torque is greatest: a little to either side it is less', () => {
    for (const { state, middle } of study.sparks) {
      const { setting } = way('driven', state);
      const plates = throttled(engine, setting.angle);
      const set = state === 'cold' ? coldEngine(plates) : plates;
      const torque = (burn50: number) => {
        const combustion = { ...set.combustion, burn50 };
        const [point] = runSpeeds({ ...set, combustion }, [spec.speed]);
        if (!point || point instanceof Error) throw point;
        return point.indicatedTorque;
      };
      const best = torque(middle);
      expect(best).toBeGreaterThan(torque(middle - 5));
      expect(best).toBeGreaterThan(torque(middle + 5));
      // What burns slowly is best burned later than at full load.
      expect(middle).toBeGreaterThan(engine.combustion.burn50);
    }
  });

  it('leaves by hotter valves where walls are hot', () => {
    const [warm, cold] = study.sparks;
    expect(warm!.best).toBeGreaterThan(cold!.best);
  });
});

it('a drilling in the solver fills its cylinder alike, whoever it stands for', () => {
  const { intake, ...rest } = throttled(engine, 7.5);
  const on = (bleeds: object) => {
    const [point] = runSpeeds({ ...rest, intake: { ...intake, ...bleeds } }, [spec.speed]);
    if (!point || point instanceof Error) throw point;
    return point;
  };
  const all = on({ throttle: { ...intake.throttle, bleed: { bore: 0.0016, open: 1 } } });
  const each = on({ bleedBores: [0.0016, 0.0016, 0.0016, 0.0016] });
  expect(each).toEqual(all);
  const none = on({});
  expect(all.volumetricEfficiency).toBeGreaterThan(1.3 * none.volumetricEfficiency);
  const one = on({ bleedBores: [0.002, 0.0016, 0.0016, 0.0016] }).cylinders!;
  const filling = (number: number) =>
    one.find(({ numbers }) => numbers.includes(number))!.volumetricEfficiency;
  expect(filling(1)).toBeGreaterThan(1.1 * filling(2));
});

it('every run settles, its mass and energy balance', () => {
  for (const outcome of study.outcomes) {
    if ('failure' in outcome) throw new Error(outcome.failure);
    expect(outcome.settled).toBe(true);
    expect(outcome.audit.massError).toBeLessThan(1e-10);
    expect(outcome.audit.energyError).toBeLessThan(1e-6);
  }
});

it('pulses come a whole number of times a cycle, as near to what the file says as that goes', () => {
  const times = (study.pulsed * 120) / spec.speed;
  expect(times).toBe(Math.round(times));
  expect(Math.abs(study.pulsed - spec.frequency)).toBeLessThanOrEqual(spec.speed / 240);
  for (const { frequency, times: often } of study.frequencies) {
    expect(frequency).toBeCloseTo((often * spec.speed) / 120, 9);
    expect(frequency).toBeGreaterThanOrEqual(10);
    expect(frequency).toBeLessThanOrEqual(110);
  }
});

it('says what it found', () => {
  const said = idleSentences(study).join(' ');
  expect(said).toContain(`one cylinder ends at most ${(100 * study.best!.spread).toFixed(1)} %`);
  expect(said).toContain(`a lambda of ${way('one').lambda.one.toFixed(2)} where`);
  const [here, quiet] = [way('shared').signal!, way('driven').signal!];
  const swings = ((100 * (here.ripple - quiet.ripple)) / way('driven').mean).toFixed(0);
  const much = ((100 * (here.offset - quiet.offset)) / way('driven').mean).toFixed(0);
  expect(said).toContain(
    `fuel that goes by pressure swings by ${swings} % and is ${much} % too much`,
  );
  expect(said).toContain(
    `burned ${study.sparks[0]!.middle.toPrecision(3)} deg after top dead centre`,
  );
  expect(said).toContain(`holds back ${study.sparks[0]!.torque.toFixed(2)} Nm warm`);
  expect(said).toContain(`${(study.sparks[0]!.late - 273.15).toFixed(0)} degC warm`);
});
