/** What idle air can come through, in sentences. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { inMilliseconds, rpm, share, sizeIn } from '../../report/figures.ts';
import { fixed } from '../../report/numbers.ts';
import { BRAKE_TORQUE, FREQUENCY, type Quantity, told } from '../../report/quantities.ts';
import type { Report, Section } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { ZERO_CELSIUS } from '../../units.ts';
import { pointCautions } from '../cautions.ts';
import { leverNotes } from '../lever.ts';
import { evennessPlot, frequencyPlot } from './figure.ts';
import type { JoinedIdle } from './joined.ts';
import type { StateWay } from './moves.ts';
import { type IdleState, STATES } from './need.ts';
import * as t from './tables.ts';
import type { WayName } from './ways.ts';

/** Said wherever idle air is spoken of. */
export const IDLE_CAUTIONS: readonly string[] = [
  'Whatever lets air in at idle must fail shut, and every plate must still shut by itself with valve, lever or motor gone: try it with the engine stopped, and know how to kill the ignition before it is started.',
  'Late ignition heats exhaust valves, manifold and catalyst: watch the exhaust temperature, and do not let it idle so for long.',
  'Keep hands, hair and cloth clear of mouths, belts and fan; run it in the open or with the exhaust drawn off.',
  'Local rules on emissions and throttles, and licensed practice, come before anything here.',
];

const ASSUMED =
  'Engine, hoses and valve are computed together, each way set until the engine draws what it wants within 3 %. Cylinders are taken as ' +
  'alike but for the one that is off, with equal fuel for all; cold: every wall has the temperature of the day. Turns, and what a valve puts into the bar it feeds, ' +
  'are closed formulas without waves. It ranks ways and sizes holes; it does not set an idle.';

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

const amount = (quantity: Quantity, value: number) =>
  told({ ...quantity, digits: 3, finest: 2 }, value);
const celsius = (kelvin: number) => `${fixed(kelvin - ZERO_CELSIUS, 0)} degC`;
const lambdas = ({ lambda }: Pick<StateWay, 'lambda'>) =>
  `a lambda of ${lambda.one.toFixed(2)} where the others have ${lambda.others.toFixed(2)}`;

type States = Record<IdleState, StateWay>;

/** A way in every state; undefined where one failed, or where the file has no such way. */
function statesOf({ joined }: JoinedIdle, name: WayName): States | undefined {
  const own = joined.filter((one) => one.name === name);
  if (own.length < STATES.length) return undefined;
  return Object.fromEntries(own.map((one) => [one.state, one])) as States;
}

/** The answer, then what stands behind it. */
export function idleSentences(study: JoinedIdle, unit?: LengthUnit): string[] {
  const of = (name: WayName) => statesOf(study, name);
  return [
    bestWords(study),
    needWords(study),
    ...plateWords(study, of('ajar'), of('driven')),
    ...bleedWords(study, of('bleeds'), unit),
    ...ownWords(study, of('own')),
    ...sharedWords(study, of('shared'), of('driven')),
    ...oneWords(study, of('one')),
    ...sparkWords(study),
    'Measure before anything is bought: air of the warm and the cold engine at idle, lambda of every cylinder, and ' +
      'what the valve flows over its duty.',
  ];
}

function bestWords({ best, ways, spec, cylinders }: JoinedIdle): string {
  if (best) {
    const { name, spread, turns = 0, reach } = best;
    return (
      `Best of these: ${t.WAYS[name][1]}. ` +
      (cylinders > 1
        ? `Cold or warm, with the load or without, one cylinder ends at most ${share(spread)} above the others; it reaches `
        : 'It reaches ') +
      `${reach.toFixed(1)} times the warm engine's air and follows in ${turns.toFixed(1)} turns, ` +
      `${inMilliseconds((60 * turns) / spec.speed, 0)}, by the closed formula of filling. Its price: ${PRICES[name]}.`
    );
  }
  const most = Math.max(...ways.flatMap(({ name, reach }) => (name === 'one' ? [] : [reach])));
  return (
    'None of these gives the cold engine with its load what it wants and leaves the signal quiet; the most is ' +
    `${most.toFixed(1)} times the warm engine's air. Take a larger valve or nipples.`
  );
}

function needWords({ spec, need }: JoinedIdle): string {
  const air = (state: IdleState) => told(t.AIR, need[state]);
  return (
    `At ${rpm(spec.speed)} the warm engine wants ${air('warm')} of air and ${air('loaded')} with ${told(BRAKE_TORQUE, spec.load)} of load, ` +
    `the cold one ${air('cold')} and ${air('most')}.`
  );
}

const opened = ({ stop }: JoinedIdle, { setting }: StateWay) =>
  told(t.OPENING, setting.angle - stop);

/** What a way gives that nobody moves, when the engine is cold. */
const leftCold = ({ cold }: States) =>
  t.short(cold)
    ? `too little for the cold engine, which gets ${told(t.AIR, cold.air)}`
    : 'enough for the cold engine';

function plateWords(study: JoinedIdle, ajar?: States, driven?: States): string[] {
  if (!ajar) return [];
  const { warm } = ajar;
  const moved = driven
    ? ` Driven on to ${opened(study, driven.most)} ${study.cylinders > 1 ? `they give it its air with the load, and the one that is off counts for ${share(driven.most.spread)}` : 'it gives it its air with the load'}.`
    : '';
  return [
    study.cylinders > 1
      ? `Plates ajar stand ${opened(study, warm)} above their stop, and one that is ${told(t.OPENING, study.spec.plateError)} further open ` +
        `takes ${share(warm.spread)} more air than the others. Left there they give ${leftCold(ajar)}.${moved}`
      : `The plate ajar stands ${opened(study, warm)} above its stop. Left there it gives ${leftCold(ajar)}.${moved}`,
  ];
}

function bleedWords({ spec, cylinders }: JoinedIdle, bleeds?: States, unit?: LengthUnit): string[] {
  if (!bleeds) return [];
  const { warm } = bleeds;
  return [
    cylinders > 1
      ? `Drillings of ${sizeIn(warm.setting.bore!, unit)} in every body do the same with plates shut, and one that is ` +
        `${sizeIn(spec.boreError, unit)} wider takes ${share(warm.spread)} more. They give ${leftCold(bleeds)}.`
      : `A drilling of ${sizeIn(warm.setting.bore!, unit)} does the same with the plate shut. It gives ${leftCold(bleeds)}.`,
  ];
}

function ownWords({ spec, cylinders }: JoinedIdle, own?: States): string[] {
  if (!own) return [];
  const duty = ({ setting }: StateWay) => told(t.DUTY, t.dutyOf(spec, setting.valve!.open));
  const all = STATES.map((state) => own[state].spread);
  const least = share(Math.min(...all));
  const most = share(Math.max(...all));
  const end = t.short(own.most)
    ? ', and it gets too little'
    : `, and has ${told(t.LEFT, own.most.left ?? 0)} times the warm engine's air left`;
  return [
    `The valve into a bar of its own is driven ${duty(own.warm)} of the time for the warm engine, ${duty(own.most)} for the cold one with the ` +
      `load${end}.` +
      (cylinders > 1
        ? ` Its bar joins the runners by wide hoses: one whose plate and nipple are off ends ${least === most ? most : `${least} to ${most}`} above the others.`
        : ''),
  ];
}

/** What a valve in the pressure bar does to the signal, of it and of the fuel that goes by it. */
function sharedWords(study: JoinedIdle, shared?: States, driven?: States): string[] {
  const [here, quiet] = [shared?.warm.signal, driven?.warm.signal];
  const way = study.ways.find(({ name }) => name === 'shared');
  const own = study.ways.find(({ name }) => name === 'own');
  if (!shared || !here || !quiet || !way || !own) return [];
  const { mean } = driven!.warm;
  const offset = here.offset - quiet.offset;
  const jets = way.enough
    ? 'Its jets pass enough.'
    : `Held open it reaches ${told(t.REACH, way.reach)} times the warm engine's air, too little: the jets that steady the signal stand in the way.`;
  const quietly = way.ripple + way.offset <= study.resolution! ? 'within' : 'beyond';
  return [
    `Through the pressure bar, warm, the sensor swings by ${amount(t.RIPPLE, here.ripple)} in place of ${amount(t.RIPPLE, quiet.ripple)} on plates, ` +
      `and reads ${amount(t.RIPPLE, Math.abs(offset))} ${offset < 0 ? 'lower' : 'higher'}, ${quietly} the ${amount(t.RIPPLE, study.resolution!)} that the sensor tells: fuel that goes by pressure ` +
      `swings by ${share((here.ripple - quiet.ripple) / mean, 0)} and is ${share(Math.abs(offset) / mean, 0)} too ${offset < 0 ? 'little' : 'much'}. ${jets} ` +
      `A bar of its own adds ${amount(t.RIPPLE, own.ripple)} of swing and ${amount(t.RIPPLE, own.offset)} of offset.`,
  ];
}

function oneWords({ ways }: JoinedIdle, one?: States): string[] {
  if (!one) return [];
  const { reach } = ways.find(({ name }) => name === 'one')!;
  const full = t.short(one.most)
    ? ` With that cylinder full it reaches ${told(t.REACH, reach)} times the warm engine's air.`
    : '';
  return [
    `All the valve's air through one cylinder leaves that one, warm, at ${lambdas(one.warm)}, with equal fuel for all: it misfires alone.${full} Do not.`,
  ];
}

const burned = (middle: number) =>
  `${told(t.MIDDLE, Math.abs(middle))} ${middle < 0 ? 'before' : 'after'} top dead centre`;

function sparkWords({ sparks, spark, spec }: JoinedIdle): string[] {
  const [warm, cold] = sparks;
  if (!warm || !cold) return [];
  const holds = warm.torque >= spec.load ? 'enough' : 'not enough';
  return [
    `The best spark at idle has half of the mixture burned ${burned(warm.middle)} in the warm engine, ${burned(cold.middle)} in the cold one. ` +
      `Ignition ${told(t.OPENING, spec.retard)} later holds back ${told(t.HELD_BACK, warm.torque)} warm and ${told(t.HELD_BACK, cold.torque)} cold for the next firing, ` +
      `${share(warm.share)} and ${share(cold.share)} of the indicated torque (${share(spark.share)} of one published engine's at its idle): ${holds} for ${told(BRAKE_TORQUE, spec.load)} of load until the air has followed. ` +
      `What leaves by the exhaust valves is then ${celsius(warm.late)} warm where it was ${celsius(warm.best)}: it heats valves, manifold and catalyst.`,
  ];
}

export function idleReport(study: JoinedIdle, scenario: Scenario): Report {
  return {
    about: 'Idle air',
    scenario,
    answer: idleSentences(study, scenario.lengthUnit),
    flags: [
      ...leverNotes(scenario.engine),
      ...pointCautions([{ name: 'the idle', outcomes: study.outcomes }]),
      ASSUMED,
    ],
    sections: [
      { heading: 'Mind', items: IDLE_CAUTIONS },
      ...waysSections(study),
      ...drivenSections(study),
    ],
    outcomes: study.outcomes,
  };
}

/** What each way gives, how it is set, and how alike cylinders are on it. */
function waysSections(study: JoinedIdle): Section[] {
  return [
    {
      tables: [t.waysTable(study)],
      notes: [
        'Above stop, drilling: for the warm engine. Duty: share of the period that the valve is driven, warm, cold, cold with load. One above: ' +
          'air of the cylinder whose plate, drilling or nipple is off by what the file says, above the others, where it is most; its lambda ' +
          "and the others' with equal fuel. Reach: most air over that of the warm engine. Turns: of the crank, until the " +
          'runner has followed but for 37 % of a step (1/e), by a closed formula without waves. Ripple, offset: what the way puts on the pressure signal at worst, over driven plates that give as much air.',
      ],
    },
    {
      tables: [t.settingsTable(study)],
      notes: [
        'Air: what the engine draws so set. Left: more that the way can let in, over the air of the warm engine. What nobody moves gives with the load what it gives without.',
      ],
    },
    {
      plots: study.cylinders > 1 ? [evennessPlot(study)] : [],
      tables: [t.evennessTable(study)],
      notes: [
        'Others: their lambda. Sensor: of the pressure bar, ' +
          `peak to peak; offset, its mean above that of the runners. The valve is driven at ${told(FREQUENCY, study.pulsed)}, which repeats with the cycle.`,
      ],
    },
  ];
}

/** What the spark holds back, and at which frequency a driven valve repeats. */
function drivenSections(study: JoinedIdle): Section[] {
  return [
    {
      tables: [t.sparkTable(study)],
      notes: [
        'Best half burned: crank angle after top dead centre of 50 % burned at which plates so set give most torque, by runs of one cylinder. Held back: what the next firing gives once the spark is back there. Exhaust: what leaves by the valves.',
      ],
    },
    {
      plots: [frequencyPlot(study)],
      tables: [t.frequencyTable(study)],
      notes: [
        'Lost: share of the period gone before the valve opens. A lower frequency loses less and swings more. In its own bar, in the pressure bar: by the formula, which takes room and air as one; ' +
          'at its sensor: over plates, computed with the engine, the valve open as for the warm engine.',
      ],
    },
  ];
}
