/** The valves of one kind: heads, cam, and what they flow. */
import { USUAL_FULLNESS } from '../../cylinder/valveLift.ts';
import type { LiftSpecification, ValveSpecification } from '../../specification.ts';
import { type Doubt, list, maybe, oneOf, optional, quantity, section } from '../key.ts';
import { numbers, type ViewOf } from '../view.ts';
import { flowBenchSection, flowCoefficientSection, resolveFlow } from './valveFlow.ts';
import { SEAT_SHARE, seatOf } from './valveHead.ts';

/** Dead centres that BTDC, ATDC, BBDC and ABDC mean for each kind of valve [deg]. */
const DEAD_CENTRES = {
  intake: { top: 360, bottom: 540 },
  exhaust: { top: 360, bottom: 180 },
} as const;

export type ValveKind = keyof typeof DEAD_CENTRES;

/** Opening and closing must fall into this span [deg]: one turn either side of the stroke. */
const SPAN = {
  intake: ['180 deg', '720 deg'],
  exhaust: ['0 deg', '540 deg'],
} as const;

/**
 * Where events and lobe centres of most engines lie, at a check lift near 1 mm; common practice, no
 * source.
 */
const USUAL = {
  intake: {
    open: ['60 deg BTDC', '30 deg ATDC'],
    close: ['10 deg ABDC', '90 deg ABDC'],
    centre: ['95 deg ATDC', '120 deg ATDC'],
  },
  exhaust: {
    open: ['90 deg BBDC', '20 deg BBDC'],
    close: ['20 deg BTDC', '60 deg ATDC'],
    centre: ['120 deg BTDC', '95 deg BTDC'],
  },
} as const;

/** What a cam card might say, for who leaves out the unit or the dead centre. */
const CAM_CARD = {
  intake: { open: '28 deg BTDC', close: '62 deg ABDC', centre: '106 deg ATDC' },
  exhaust: { open: '58 deg BBDC', close: '26 deg ATDC', centre: '106 deg BTDC' },
} as const;

/** Longest opening that is taken [deg of crank]; common practice, no source. */
export const LONGEST_DURATION = 400;

export function valvesSection<K extends ValveKind>(kind: K) {
  return section(
    `The ${kind} valves of one cylinder.`,
    {
      count: quantity('ratio', `Number of ${kind} valves per cylinder.`, {
        example: '2',
        limits: ['1', '4'],
        whole: true,
        ...formOf(kind, 'valves a cylinder'),
      }),
      headDiameter: quantity('length', 'Outside diameter of the valve head, by vernier.', {
        limits: ['5 mm', '150 mm'],
        usual: ['15 mm', '60 mm'],
        ...formOf(kind, 'valve head'),
      }),
      seatDiameter: maybe('length', 'Inner diameter of the seat: what the throat leaves open.', {
        limits: ['4 mm', '150 mm'],
        absent: { rule: `${SEAT_SHARE} of the head`, why: 'common practice, no source' },
        ...formOf(kind, 'valve seat'),
        doubt: { half: '0.2 mm', why: 'vernier inside a seat' },
      }),
      lift: liftSection(kind),
      flowBench: optional(flowBenchSection),
      flowCoefficient: optional(flowCoefficientSection),
    },
    oneOf(
      'the flow',
      [['flowBench'], ['flowCoefficient']],
      'keep flowBench or flowCoefficient',
      true,
    ),
  );
}

const WHEEL = { half: '2 deg', why: 'degree wheel, chain and check lift' };

/** When the valve moves, off the cam card. */
function timingKeys(kind: ValveKind) {
  const event = (key: 'open' | 'close' | 'centre', label: string, doubt: Doubt) => ({
    ...rowOf(kind),
    usual: USUAL[kind][key],
    example: CAM_CARD[kind][key],
    doubt,
    ...formOf(kind, label),
  });
  return {
    open: maybe(
      'angle',
      'Crank angle of opening at the check lift, off the cam card.',
      event('open', 'opens', WHEEL),
    ),
    close: maybe(
      'angle',
      'Crank angle of closing at the check lift, off the cam card.',
      event('close', 'closes', WHEEL),
    ),
    centre: maybe(
      'angle',
      'Crank angle of full lift: the centre of the lobe.',
      event('centre', 'lobe centre', { half: '2 deg', why: 'degree wheel and chain' }),
    ),
    duration: maybe('angle', 'Crank angle open at the check lift.', {
      limits: ['90 deg', `${LONGEST_DURATION} deg`],
      usual: ['180 deg', '330 deg'],
      example: '244 deg',
      doubt: { half: '2 deg', why: 'check lift' },
      ...formOf(kind, 'duration'),
    }),
  };
}

/** How far it moves. */
function heightKeys(kind: ValveKind) {
  return {
    checkLift: maybe('length', 'Lift at which the timing is stated.', {
      limits: ['0.05 mm', '5 mm'],
      usual: ['0.1 mm', '1.5 mm'],
      ...formOf(kind, 'check lift'),
    }),
    maximum: maybe('length', 'Full lift at the valve.', {
      limits: ['1 mm', '30 mm'],
      usual: ['4 mm', '18 mm'],
      doubt: { half: '0.1 mm', why: 'dial gauge and clearance' },
      ...formOf(kind, 'full lift'),
    }),
    fullness: maybe(
      'ratio',
      'Mean lift from seat to seat over full lift: a dial gauge read every 10 deg while the valve is open, the sum over the count and over full lift. Beside timing only; a table has its own.',
      {
        limits: ['0.4', '0.7'],
        usual: ['0.5', '0.64'],
        absent: { rule: '0.556, lift by cos^1.5', why: 'our own choice, no source' },
        doubt: {
          half: '0.04',
          why: 'our own reading, no source: lobes lie between a whole cosine wave, 0.5, and half a sine, 0.64',
        },
      },
    ),
  };
}

const rowOf = (kind: ValveKind) => ({ limits: SPAN[kind], deadCentres: DEAD_CENTRES[kind] });

function liftSection(kind: ValveKind) {
  return section(
    'Lift of the valve, clearance taken off: open and close, or centre and duration, each with checkLift and maximum; or a table.',
    { ...timingKeys(kind), ...heightKeys(kind), table: optional(tableOf(rowOf(kind))) },
    oneOf(
      'the lift',
      [
        ['table'],
        ['open', 'close', 'checkLift', 'maximum'],
        ['centre', 'duration', 'checkLift', 'maximum'],
      ],
      'give open and close, or centre and duration, each with checkLift and maximum off the cam card; or a table of lift against crank angle',
    ),
  );
}

/** In the form the valves of both kinds stand under one head. */
const formOf = (kind: ValveKind, what: string) => ({
  form: { group: 'Valves' as const, label: `${kind === 'intake' ? 'Intake' : 'Exhaust'} ${what}` },
});

function tableOf(turn: { limits: readonly [string, string] }) {
  const row = section('One row of the lift table.', {
    angle: quantity('angle', 'Crank angle; 0 deg is firing top dead centre.', turn),
    lift: quantity('length', 'Lift of the valve at that angle.', { limits: ['0 mm', '30 mm'] }),
  });
  const description = 'Lift against crank angle, rising angles, from 0 lift to 0 lift.';
  return list(row, description, { least: 5, most: 400, rising: 'angle' });
}

export type ValvesView = ViewOf<ReturnType<typeof valvesSection>>;
export type LiftView = ValvesView['lift'];

export function resolveValves(valves: ValvesView, kind: ValveKind): ValveSpecification {
  return {
    count: valves.count.take(),
    diameter: valves.seatDiameter.take(() => seatOf(valves)!),
    lift: resolveLift(valves.lift),
    flow: resolveFlow(valves, kind),
  };
}

function resolveLift(lift: LiftView): LiftSpecification {
  const { rows } = lift.table;
  if (rows.length > 0) {
    const angle = numbers(rows.map((row) => row.angle));
    return { kind: 'table', angle, lift: numbers(rows.map((row) => row.lift)) };
  }
  const { open, close, centre, duration, checkLift, maximum } = lift;
  const half = (duration.given ?? 0) / 2;
  return {
    kind: 'timing',
    open: open.given ?? centre.given! - half,
    close: close.given ?? centre.given! + half,
    checkLift: checkLift.given!,
    maximum: maximum.given!,
    fullness: lift.fullness.take(() => USUAL_FULLNESS),
  };
}
