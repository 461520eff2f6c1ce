/** Hoses from the runners to a small volume with a pressure sensor. */
import type { PressureBarSpecification } from '../../fittings.ts';
import type { EngineSpecification } from '../../specification.ts';
import { list, maybe, optional, quantity, section } from '../key.ts';
import { quantityToText } from '../quantity.ts';
import type { ScenarioView } from '../schema.ts';
import { numbers, takeAll } from '../view.ts';
import { checkOpen } from './throttle.ts';
import { anglesAbove } from './usual.ts';

const BORE = { limits: ['0.2 mm', '25 mm'], usual: ['1 mm', '8 mm'] } as const;
const HOSE = { limits: ['10 mm', '5 m'], usual: ['50 mm', '1.5 m'] } as const;
/** Dead centres of the induction. */
const CRANK = {
  limits: ['0 deg', '1440 deg'],
  deadCentres: { top: 360, bottom: 540 },
} as const;

/** Plate angles above the stop where the file gives none [deg]; wide open comes after them. */
const ABOVE_STOP = [1.5, 4, 10, 20, 40];
/** Most points of the table of speeds and angles in each direction. */
const MOST = 12;

export const pressureBarSection = optional(
  section(
    'Hoses from the runners, each tapped just behind its throttle body, to a small volume with a pressure sensor. Only the study of the signal computes with them.',
    {
      hoses: maybe('ratio', 'How many runners have a hose.', {
        limits: ['1', '16'],
        whole: true,
        absent: { rule: 'one a cylinder', why: 'common practice, no source' },
      }),
      hoseLength: quantity('length', 'Length of each hose, runner to bar.', HOSE),
      hoseBore: quantity('length', 'Inside diameter of each hose.', BORE),
      jetBore: maybe('length', "Bore of the calibrated hole at the runner's end of each hose.", {
        limits: ['0.2 mm', '25 mm'],
        usual: ['0.4 mm', '6 mm'],
        absent: { rule: 'bore of the hose', why: 'no jet; a nipple as wide as the hose' },
      }),
      jetCoefficient: maybe('ratio', 'Discharge coefficient of that hole.', {
        limits: ['0.3', '1'],
        usual: ['0.55', '0.98'],
        absent: {
          value: '0.82',
          why: 'short cylindrical mouthpieces 0.81 to 0.84: Unwin, Hydraulics, Encyclopaedia Britannica 1911',
        },
      }),
      volume: quantity('volume', 'Volume of the bar that the hoses meet in.', {
        limits: ['50 mm3', '10 L'],
        usual: ['2 cm3', '500 cm3'],
      }),
      sensorHoseLength: maybe('length', 'Hose from the bar to the sensor.', {
        limits: ['0 mm', '5 m'],
        absent: { value: '0 mm', why: 'the sensor sits on the bar' },
      }),
      sensorHoseBore: maybe('length', 'Inside diameter of that hose.', {
        ...BORE,
        absent: { rule: 'as the hoses of the runners', why: 'common practice, no source' },
      }),
      sensorVolume: maybe('volume', 'Volume inside the sensor and its nipple.', {
        limits: ['1 mm3', '100 cm3'],
        usual: ['50 mm3', '3 cm3'],
        absent: { value: '0.5 cm3', why: 'common practice, no source' },
      }),
      idleSpeed: maybe('speed', 'Idle speed, the lowest that is looked at.', {
        limits: ['300 rpm', '4000 rpm'],
        absent: { value: '1000 rpm', why: 'common practice, no source' },
      }),
      speeds: optional(
        list(
          quantity('speed', 'Engine speed to look at.', { limits: ['300 rpm', '25000 rpm'] }),
          'Speeds to look at above idle, rising; without it three up to the highest of speeds.',
          { most: MOST, rising: '' },
        ),
      ),
      angles: optional(
        list(
          quantity('angle', 'Plate angle from the plane across the bore.', {
            limits: ['0 deg', '90 deg'],
          }),
          `Plate angles to look at, rising, the idle's first; without it ${ABOVE_STOP.join(', ')} deg above the stop, and wide open.`,
          { least: 2, most: MOST, rising: '' },
        ),
      ),
      mostLag: maybe('time', 'Longest time that the sensor may take from 10 to 90 % of a step.', {
        limits: ['0.2 ms', '2 s'],
        usual: ['2 ms', '200 ms'],
        absent: { value: '20 ms', why: 'one cycle at 6000 rpm; common practice, no source' },
      }),
      resolution: maybe('pressure', 'Difference that sensor and reading still tell.', {
        limits: ['1 Pa', '0.2 bar'],
        usual: ['0.1 kPa', '5 kPa'],
        absent: { value: '2 kPa', why: 'two per cent of full scale; common practice, no source' },
      }),
      windowFrom: maybe('angle', 'Start of the crank window that is read once a cycle.', {
        ...CRANK,
        absent: { value: '450 deg', why: 'middle of the induction; common practice, no source' },
      }),
      windowTo: maybe('angle', 'Where that window ends.', {
        ...CRANK,
        absent: { value: '540 deg', why: 'bottom dead centre; common practice, no source' },
      }),
      filter: maybe('time', 'Time constant of a filter in time, where no window is read.', {
        limits: ['0.1 ms', '2 s'],
        absent: { value: '10 ms', why: 'common practice, no source' },
      }),
      plateError: maybe('angle', 'How far one plate may stand open beyond the others.', {
        limits: ['0.01 deg', '10 deg'],
        absent: { value: '0.2 deg', why: 'common practice, no source' },
      }),
    },
  ),
);

export function checkPressureBar({ pressureBar: bar, engine, intake }: ScenarioView): void {
  const cylinders = engine.cylinders.given!;
  if (bar.hoses.given! > cylinders) {
    bar.hoses.problem(
      `more hoses than cylinders: ${bar.hoses.given} for ${cylinders}`,
      'give each runner one hose at most',
      `at most ${cylinders}`,
    );
  }
  if (bar.jetBore.given! > bar.hoseBore.given!) {
    bar.jetBore.problem(
      'the jet is wider than its hose',
      'give its bore, not its thread; leave it out where there is none',
      `at most ${quantityToText(bar.hoseBore.given!, 'length')}`,
    );
  }
  if (bar.volume.given! < bar.sensorVolume.assumed) {
    bar.volume.problem(
      "the bar's volume is smaller than the sensor's",
      'count all that the hoses open into, the inside of the sensor apart',
      `at least ${quantityToText(bar.sensorVolume.assumed, 'volume')}`,
    );
  }
  if (bar.windowTo.assumed <= bar.windowFrom.assumed) {
    bar.windowTo.problem(
      'the window ends before it starts',
      'add 720 deg where it runs over the firing dead centre',
      `more than ${bar.windowFrom.assumed} deg`,
    );
  }
  checkOpen(bar.angles.rows, intake.throttle);
}

/** Hoses, bar and sensor, or undefined where the file has none. */
export function resolvePressureBar(
  { pressureBar }: ScenarioView,
  { cylinder, intake }: EngineSpecification,
  engineSpeeds: readonly number[],
): PressureBarSpecification | undefined {
  const { here, hoses, hoseLength, hoseBore, jetBore, sensorHoseBore, ...rest } = pressureBar;
  if (!here.present) return undefined;
  const { speeds, angles, idleSpeed, windowFrom, windowTo, ...others } = rest;
  const bore = hoseBore.given!;
  const own = numbers(speeds.rows);
  const idle = idleSpeed.take();
  const above = own.length > 0 ? own : speedsAbove(idle, engineSpeeds.at(-1)!);
  if (own.length === 0) speeds.note(`${above.join(', ')} rpm`, 'common practice, no source');
  return {
    hoses: hoses.take(() => cylinder.count),
    hoseLength: hoseLength.take(),
    hoseBore: bore,
    jetBore: jetBore.take(() => bore),
    sensorHoseBore: sensorHoseBore.take(() => bore),
    speeds: [idle, ...above.filter((speed) => speed > idle)],
    angles: anglesOf(angles, intake.throttle.closedAngle),
    window: { from: windowFrom.take(), to: windowTo.take() },
    ...takeAll(others),
  };
}

/** Three speeds between idle and the highest, it too, to the next hundred [rpm]. */
function speedsAbove(idle: number, highest: number): number[] {
  const at = (share: number) => Math.round((idle + share * (highest - idle)) / 100) * 100;
  return [at(0.25), at(0.6), at(1)];
}

function anglesOf(angles: ScenarioView['pressureBar']['angles'], stop: number): number[] {
  if (angles.rows.length > 0) return numbers(angles.rows);
  const usual = anglesAbove(stop, ABOVE_STOP);
  angles.note(`${usual.join(', ')} deg`, 'common practice, no source');
  return usual;
}
