/**
 * A joint of like pipes of an evenly firing engine, of which one is solved and the others echo it
 * (echo.ts), with any other ends that meet there. Source: as junction.ts.
 */
import type { End } from './ductEnd.ts';
import { ArrivalRecord, EchoEnd } from './echo.ts';
import { junction } from './junction.ts';
import type { Node } from './node.ts';

export interface Collector extends Node {
  /** The ends that stand for the other pipes. */
  readonly echoes: readonly EchoEnd[];
  /** Takes over what another mesh of the same joint has heard. */
  startFrom(other: Collector): void;
  readonly record: ArrivalRecord;
}

/** `pipe` is solved; `joined` like pipes meet in all, firing 720 / joined degrees apart. */
export function collector(pipe: End, joined: number, others: readonly End[]): Collector {
  const record = new ArrivalRecord();
  const echoes = Array.from(
    { length: joined - 1 },
    (_, k) => new EchoEnd(pipe.area, ((k + 1) * 720) / joined, pipe.arriving),
  );
  const joint = junction([pipe, ...others, ...echoes]);
  let started = false;
  return {
    ends: [pipe, ...others],
    echoes,
    record,
    startFrom: (other) => {
      record.copy(other.record);
      started = true;
    },
    exchange: (gas, moment) => {
      if (!started) record.fill(pipe.arriving);
      started = true;
      record.note(pipe.arriving, moment.crankAngle);
      for (const echo of echoes) record.recall(moment.crankAngle - echo.delay, echo.arriving);
      joint.exchange(gas, moment);
      for (const echo of echoes) echo.tally(moment.dt);
    },
  };
}
