/** How the engine idles, and what air for it can come through. */

import { sweptVolume } from '../../cylinder/crank.ts';
import type { IdleSpecification } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { maybe, optional, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { ScenarioView } from '../schema.ts';
import { takeAll } from '../view.ts';

/** Air of a warm idle a volume swept [kg/(s m^3)]: the mean of two engines, 0.91 and 0.97 g/s a litre. */
const AIR_PER_SWEPT = 0.94;

export const idleSection = optional(
  section('Air for the idle. Only the study of the idle computes with it.', {
    speed: maybe('speed', 'Idle speed.', {
      limits: ['300 rpm', '4000 rpm'],
      usual: ['600 rpm', '2000 rpm'],
      absent: { value: '1000 rpm', why: 'common practice, no source' },
    }),
    air: maybe('massFlow', 'Air of the warm engine at idle, all cylinders together.', {
      limits: ['0.1 g/s', '50 g/s'],
      usual: ['0.3 g/s', '12 g/s'],
      absent: {
        rule: '0.94 g/s a litre',
        why: 'U.S. Department of Energy, Fact 861 (2015): two engines at 0.91 and 0.97',
      },
    }),
    coldExtra: maybe('ratio', 'Air that the cold engine wants more, over that of the warm one.', {
      limits: ['0', '5'],
      usual: ['0.2', '1.5'],
      absent: { value: '0.6', why: 'thick oil and fast idle; common practice, no source' },
    }),
    load: maybe('torque', 'Load that comes on at idle: fan, lamps.', {
      limits: ['0 Nm', '100 Nm'],
      usual: ['1 Nm', '20 Nm'],
      absent: { value: '5 Nm', why: 'common practice, no source' },
    }),
    efficiency: maybe('ratio', 'Share of the heat of more fuel that becomes work.', {
      limits: ['0.1', '0.5'],
      absent: { value: '0.35', why: 'common practice, no source' },
    }),
    plateShare: maybe(
      'ratio',
      'Share of the warm air that plates let in where a valve gives the rest.',
      {
        limits: ['0.05', '1'],
        absent: { value: '0.5', why: 'common practice, no source' },
      },
    ),
    plateError: maybe('angle', 'How far one plate may stand off the others.', {
      limits: ['0.001 deg', '2 deg'],
      absent: { value: '0.05 deg', why: 'screw and shaft; common practice, no source' },
    }),
    boreError: maybe('length', 'How far bores of drillings and nipples may differ.', {
      limits: ['0.001 mm', '1 mm'],
      absent: { value: '0.05 mm', why: 'a twist drill; common practice, no source' },
    }),
    valveBore: maybe('length', 'Bore of the valve held open.', {
      limits: ['0.5 mm', '40 mm'],
      usual: ['2 mm', '15 mm'],
      absent: { value: '6 mm', why: 'common practice, no source' },
    }),
    frequency: maybe('frequency', 'Times a second that the valve is driven.', {
      limits: ['2 Hz', '2000 Hz'],
      usual: ['10 Hz', '300 Hz'],
      absent: { value: '100 Hz', why: '10 to 110 Hz are usual: from memory' },
    }),
    deadTime: maybe('time', 'Time that the valve takes to open, less that to shut.', {
      limits: ['0 ms', '20 ms'],
      usual: ['0 ms', '4 ms'],
      absent: { value: '1.5 ms', why: '1 to 3 ms are usual: from memory' },
    }),
    barVolume: maybe('volume', 'Volume of a bar of its own for the air, hoses not counted.', {
      limits: ['1 cm3', '10 L'],
      usual: ['20 cm3', '1 L'],
      absent: { value: '150 cm3', why: 'common practice, no source' },
    }),
    hoseLength: maybe('length', 'Hose from that bar to each runner.', {
      limits: ['10 mm', '3 m'],
      absent: { value: '250 mm', why: 'common practice, no source' },
    }),
    hoseBore: maybe('length', 'Bore of those hoses.', {
      limits: ['1 mm', '30 mm'],
      absent: { value: '6 mm', why: 'common practice, no source' },
    }),
    nippleBore: maybe('length', 'Bore of the nipple of each, which shares the air out.', {
      limits: ['0.3 mm', '30 mm'],
      absent: { value: '3 mm', why: 'common practice, no source' },
    }),
    retard: maybe('angle', 'How far after the best spark it idles, as a quick reserve.', {
      limits: ['0 deg', '30 deg'],
      absent: { value: '15 deg', why: 'common practice, no source' },
    }),
  }),
);

export function checkIdle({ idle }: ScenarioView): void {
  const { frequency, deadTime, nippleBore, hoseBore } = idle;
  const period = 1 / frequency.assumed;
  if (deadTime.assumed >= period) {
    deadTime.problem(
      'the valve never opens: its dead time fills the whole period',
      'drive it at a lower frequency, or take a quicker valve',
      `less than ${quantityToText(period, 'time')}`,
    );
  }
  if (nippleBore.assumed > hoseBore.assumed) {
    nippleBore.problem(
      'the nipple is wider than its hose',
      'give bores, not outside diameters',
      `at most ${quantityToText(hoseBore.assumed, 'length')}`,
    );
  }
}

/** What is told of the idle, or undefined where the file has nothing of it. */
export function resolveIdle(
  { idle }: ScenarioView,
  { cylinder }: EngineSpecification,
): IdleSpecification | undefined {
  const { here, air, ...rest } = idle;
  if (!here.present) return undefined;
  const swept = cylinder.count * sweptVolume(cylinder);
  return { air: air.take(() => AIR_PER_SWEPT * swept), ...takeAll(rest) };
}
