/** What idle air can come through, in sentences. */
import { rpm, share } from '../../report/figures.ts';
import { BRAKE_TORQUE, FREQUENCY, type Quantity, told } from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { pointCautions } from '../cautions.ts';
import type { IdleStudy } from './compute.ts';
import { frequencyPlot } from './figure.ts';
import type { JoinedIdle } from './joined.ts';
import * as t from './tables.ts';
import type { IdleWay, WayName } from './ways.ts';

/** Said wherever idle air is spoken of. */
export const IDLE_CAUTIONS: readonly string[] = [
  'Whatever lets air in at idle must fail shut, and every plate must still shut by itself with valve, lever or motor gone: try it with the engine stopped, and know how to kill the ignition before it is started.',
  'Late ignition heats exhaust valves, manifold and catalyst: watch the exhaust temperature, and do not let it idle so for long.',
  'Keep hands, hair and cloth clear of mouths, belts and fan; run it in the open or with the exhaust drawn off.',
  'Local rules on emissions and throttles, and licensed practice, come before anything here.',
];

const ASSUMED =
  'Sizes, reach and turns by closed formulas, no waves: filling behind a plate without valve overlap, so that real runners stand higher, valve and nipples choked. How even it is, ' +
  'and the signal, from the computed engine, bleeds apart: cylinders alike but for the one that is off, equal fuel for all. It ranks ways and sizes holes; it does not set an idle.';

/** What each way costs besides what the table shows. */
const PRICES: Record<WayName, string> = {
  ajar: 'nothing follows a cold engine or a load',
  bleeds: 'nothing follows a cold engine or a load',
  own: 'a second bar, its hoses, and runners joined by wide hoses: clamp them to balance the bodies',
  shared: 'the valve stands in the pressure signal, and its jets limit the air',
  one: 'one cylinder runs lean alone',
  driven:
    'a motor that must fail shut, fine steps near the stop, and plates that stay as uneven as they are',
};

const amount = (quantity: Quantity, value: number) => told({ ...quantity, digits: 3 }, value);
const find = ({ ways }: IdleStudy, name: WayName) => ways.find((way) => way.name === name);

export function idleSentences(study: IdleStudy): string[] {
  return [
    bestWords(study),
    needWords(study),
    plateWords(study),
    oneWords(find(study, 'one')!),
    ...sharedWords(study),
    sparkWords(study),
    'Measure before anything is bought: air of the warm and the cold engine at idle, lambda of every cylinder, and ' +
      'what the valve flows over its duty.',
  ];
}

/** The answer, then what the computed engine says to it. */
export function joinedIdleSentences(study: JoinedIdle): string[] {
  const [best, ...rest] = idleSentences(study);
  return [best!, ...joinedWords(study), ...rest];
}

function bestWords({ best, ways }: IdleStudy): string {
  if (best) {
    const { name, spread, turns, reach } = best;
    return (
      `Best of these: ${t.WAYS[name][1]}. One cylinder ends up to ${share(spread)} above the others, it reaches ` +
      `${reach.toFixed(1)} times the warm engine's air and follows in ${amount(t.TURNS, turns ?? 0)} turns. ` +
      `Its price: ${PRICES[name]}.`
    );
  }
  const most = Math.max(...ways.map(({ reach }) => reach));
  return `None of these reaches the cold engine with its load and leaves the signal quiet; the most is ${most.toFixed(1)} times the warm engine's air. Take a larger valve or nipples.`;
}

function needWords({ spec, need }: IdleStudy): string {
  return (
    `At ${rpm(spec.speed)} the warm engine wants ${told(t.AIR, need.warm)} of air, the cold one ${told(t.AIR, need.cold)}, ` +
    `and ${told(BRAKE_TORQUE, spec.load)} of load ${told(t.AIR, need.load)} more.`
  );
}

function plateWords(study: IdleStudy): string {
  const [plates, holes] = [find(study, 'ajar')!, find(study, 'bleeds')!];
  const { spec } = study;
  return (
    `Plates ajar stand ${told(t.OPENING, plates.opening!)} above their stop, and one that is ` +
    `${told(t.OPENING, spec.plateError)} off takes ${share(plates.spread)} more air. Drillings of ${told(t.BORE, holes.bore!)} ` +
    `in every body do the same with plates shut, and one that is ${told(t.BORE, spec.boreError)} off takes ${share(holes.spread)} more. ` +
    'Neither follows anything.'
  );
}

function oneWords({ lambda }: IdleWay): string {
  return (
    `All the valve's air through one cylinder leaves that one at a lambda of ${lambda.one.toFixed(2)} and the others at ` +
    `${lambda.others.toFixed(2)} where all have equal fuel: it misfires alone. Do not.`
  );
}

function sharedWords(study: IdleStudy): string[] {
  const way = find(study, 'shared');
  if (!way) return [];
  const { mean, resolution } = study;
  const { ripple, offset, reach, enough } = way;
  const can = enough
    ? 'Its jets pass enough.'
    : `Its jets and the valve reach ${reach.toFixed(1)} times the warm engine's air, too little.`;
  const quiet = ripple + offset <= resolution! ? 'less than' : 'more than';
  return [
    `Through the pressure bar the valve adds ${amount(t.RIPPLE, ripple)} of ripple to the signal, ` +
      `${share(ripple / mean)} of fuel by pressure, and lifts its mean by ${amount(t.OFFSET, offset)}, ${share(offset / mean)} of fuel: together ${quiet} the ` +
      `${amount(t.RIPPLE, resolution!)} that the sensor tells. ${can} A bar of its own adds none of that.`,
  ];
}

/** What the engine's own waves make of it: all cylinders, hoses and valve computed together. */
function joinedWords({ joined, pulsed }: JoinedIdle): string[] {
  const way = (name: WayName) => joined.find((one) => one.name === name);
  const [plates, own, shared, one] = (['ajar', 'own', 'shared', 'one'] as const).map(way);
  if (!plates || !own || !one) return [];
  const signal =
    plates.signal && own.signal
      ? `The sensor swings by ${amount(t.RIPPLE, plates.signal.ripple)} on plates ajar and by ${amount(t.RIPPLE, own.signal.ripple)} beside the valve's own bar` +
        (shared?.signal
          ? `, but by ${amount(t.RIPPLE, shared.signal.ripple)} with the valve in the pressure bar, and reads ${amount(t.OFFSET, shared.signal.offset)} above the runners`
          : '')
      : '';
  return [
    `Engine, hoses and valve computed together, the valve at ${told(FREQUENCY, pulsed)} so that it repeats with the cycle, one plate ` +
      `and its nipple off: that cylinder ends ${share(plates.spread)} above the others on plates ajar and ${share(own.spread)} on a bar of its own, which ` +
      `joins the runners and levels them${shared ? `, ${share(shared.spread)} on the pressure bar` : ''}. All through one leaves it at a lambda of ` +
      `${one.lambda.one.toFixed(2)} and the others at ${one.lambda.others.toFixed(2)}.`,
    signal === '' ? '' : `${signal}.`,
  ].filter((sentence) => sentence !== '');
}

function sparkWords({ spark, spec }: IdleStudy): string {
  const holds = spark.torque >= spec.load ? 'enough' : 'not enough';
  return (
    `Ignition ${told(t.OPENING, spec.retard)} late holds ${share(spark.share)} of the torque in reserve within one firing (by one published engine at its idle), some ` +
    `${told(BRAKE_TORQUE, spark.torque)}, ${holds} for the load until the air has followed; its heat, some ${spark.hotter.toFixed(0)} K, goes out with the exhaust.`
  );
}

export function idleReport(study: JoinedIdle, scenario: Scenario): Report {
  return {
    about: 'Idle air',
    scenario,
    answer: joinedIdleSentences(study),
    flags: [...pointCautions([{ name: 'the idle', outcomes: study.outcomes }]), ASSUMED],
    sections: [
      { heading: 'Mind', items: IDLE_CAUTIONS },
      {
        tables: [t.waysTable(study)],
        notes: [
          'Above stop: plates, warm. Duty: share of the period that the valve is driven, warm, cold, cold with load. One above: ' +
            'air of a cylinder whose plate, drilling or nipple is off by what the file says, above the others; its lambda ' +
            "and the others' with equal fuel. Reach: most air over that of the warm engine. Turns: of the crank, until the " +
            'runner has followed to one e-th. Ripple, offset: what the way puts on the pressure signal, over plates ajar.',
        ],
      },
      {
        tables: [t.joinedTable(study)],
        notes: [
          'Without a valve, and with it open for what the warm engine wants of it by the closed formulas; the first cylinder has ' +
            'its plate further open and its nipple wider by what the file says they are off. Others: their lambda. Sensor: of the pressure bar, peak to ' +
            'peak; offset, its mean above that of the runners.',
        ],
      },
      { plots: [frequencyPlot(study)] },
      {
        tables: [t.frequencyTable(study)],
        notes: [
          'Lost: share of the period gone before the valve opens. A lower frequency loses less and swings more.',
        ],
      },
    ],
    outcomes: study.outcomes,
  };
}
