/** The study of the pedal in sentences. */
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { circleArea } from '../../duct/profile.ts';
import { throttleOf } from '../../loss/throttles.ts';
import { counted, listed } from '../../report/numbers.ts';
import * as q from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { EngineSpecification } from '../../specification.ts';
import { type PedalStudy, type SpringFigures, stuck } from './compute.ts';
import { effortPlot } from './figure.ts';
import { closingTable, effortTable, springTable } from './tables.ts';

/** Said wherever return springs are spoken of. */
export const PEDAL_CAUTIONS: readonly string[] = [
  'A throttle that stays open can kill. Throttles must close by themselves, cold, hot, dirty and worn, whatever single part has broken: try it by hand with each spring, link and cable taken off in turn, engine stopped, before the first start and after every piece of work.',
  'This is arithmetic on clean parts. A cable that frays or sticks in its sheath, a plate that binds in its bore, a floor mat under the pedal, ice, and play in joints are not in it; leave a margin for them, and fit a stop that takes the foot before cable and plates do.',
  'Rules ask for more than arithmetic. 49 CFR 571.124, S5 and S5.1 (2006 text): at least two sources of energy that each return the throttle to idle whenever the driver lets go, also with one of them severed, from -40 to +52 deg C; S5.3 (from memory) within 1 s up to 4536 kg, 2 s above, 3 s in the cold. NHTSA, 18 July 1975: one severance at a time. A national rule book of motor sport, quoted second hand: throttles sprung shut from outside whatever part of the linkage fails, and each separate body, or rigid pair, by springs of its own.',
  'Whoever is licensed to do or to inspect such work where you live decides whether a linkage is safe, and scrutineers decide whether it may start; they come before anything here.',
];

const limits = ({ engine }: Scenario): string[] => [
  'At a creep: no mass, no weight and no time to return. Links turn all shafts by equal angles and have no friction of their own; the cable leaves the pedal by a quadrant.',
  airWords(engine),
  'What a wire bears: at rest, 0.56 of its tensile strength in compression springs, 0.45 in tension springs and 0.7 in torsion springs (EN 13906, from memory), strength of drawn wire class SM (EN 10270-1, from memory). Of other wires ask the maker. Hooks, legs and fatigue are not looked at.',
];

/** What air does to a throttle that is shut: no torque, but it leans on what carries it. */
function airWords({ ambient, intake: { throttle } }: EngineSpecification): string {
  const force = q.told(q.newtons('', ''), ambient.pressure * circleArea(throttle.bore));
  const { noun, carriedBy } = throttleOf(throttle);
  const turns =
    (throttle.kind ?? 'butterfly') === 'butterfly'
      ? 'a centred thin plate that is shut is not turned by it, one part open by a few hundredths of a newton metre (from memory). But vacuum'
      : 'vacuum';
  return `Air on the ${noun}s is left out: ${turns} presses a shut ${noun} ${carriedBy}, by up to ${force} (all pressure of the day on the bore), and that rubs more than it does at rest. Measure friction, and that everything falls shut, with the engine idling too.`;
}

/** Force at the pad that drivers are used to [N]: released, and at full travel; a maker of pedals. */
const USUAL = { released: 20, full: [40, 60] } as const;

export function pedalSentences(study: PedalStudy, unit?: LengthUnit): string[] {
  return [safety(study), ownSprings(study), effort(study, unit), reach(study, unit), wires(study)];
}

function safety(study: PedalStudy): string {
  const wrong = stuck(study);
  if (wrong.length > 0) {
    const places = wrong.map(({ without, shaft }) =>
      without === '' ? `${shaft} with every part whole` : `${shaft} without ${without}`,
    );
    return `NOT SAFE: plates are not drawn shut everywhere in their travel in ${counted(wrong.length, 'case')} of ${study.closings.length}: ${listed(places)}.`;
  }
  const least = study.closings.reduce((low, one) => (one.left < low.left ? one : low));
  const torque = q.told(q.newtonMetres('', ''), least.left);
  const gone = least.without === '' ? 'with every part whole' : `without ${least.without}`;
  return `Every plate is still drawn shut with any single spring, link or cable gone. The least torque beyond friction, ${torque}, is left on "${least.shaft}" ${gone}.`;
}

function ownSprings({ linkage: { shafts } }: PedalStudy): string {
  const bare = shafts.filter(({ plates, springs }) => plates > 0 && springs.length === 0);
  if (bare.length === 0) return '';
  const names = listed(bare.map(({ name }) => name));
  return `No spring of its own: ${names}. Some rules ask for one on each body or rigid pair.`;
}

function effort({ curve, hysteresis }: PedalStudy, unit?: LengthUnit): string {
  const [first, last] = [curve[0]!, curve.at(-1)!];
  const force = (value: number) => q.told(q.newtons('', ''), value);
  const [low, high] = USUAL.full;
  return (
    `The foot feels ${force(first.out)} as the plates leave their stops and ${force(last.out)} wide open, after ` +
    `${q.told(q.inUnit(q.FOOT_TRAVEL, unit), last.travel)} of travel; on the way back ${force(last.back)} wide open and ${force(first.back)} at the stops. ${comesBack(first.back, last.back)}` +
    `Bends of the cable part the two by a factor of ${q.told(q.ratio('', ''), hysteresis)}. Usual and comfortable, as a maker ` +
    `of pedals says: about ${USUAL.released} N released and ${low} to ${high} N at full travel.`
  );
}

/** Whether the foot has to pull. */
const comesBack = (...back: number[]) =>
  Math.min(...back) > 0 ? '' : 'THE PEDAL DOES NOT COME BACK by itself. ';

function reach({ linkage, reached, curve }: PedalStudy, unit?: LengthUnit): string {
  const { travel } = linkage.pedal;
  if (reached === undefined || travel === undefined) return '';
  const stop = q.told(q.inUnit(q.FOOT_TRAVEL, unit), travel);
  const needed = q.told(q.inUnit(q.FOOT_TRAVEL, unit), curve.at(-1)!.travel);
  if (reached < linkage.opening) {
    return `The pedal meets its stop at ${stop} with the plates ${q.told(q.OPENING, reached)} from shut, ${q.told(q.OPENING, linkage.opening - reached)} short of wide open: a shorter lever at the shafts or a longer arm at the pedal opens them.`;
  }
  return `Wide open takes ${needed} of the ${stop} there are: set the stop there, or the foot pulls on cable and plates.`;
}

function wires({ springs }: PedalStudy): string {
  const over = springs.filter(({ stress, borne }) => stress! > borne!);
  if (over.length === 0) return '';
  const words = ({ spring, place, stress, borne }: SpringFigures) =>
    `${spring.name} (${place}) ${q.told(q.stress('', ''), stress!)} where the wire bears ${q.told(q.stress('', ''), borne!)}`;
  return `Overstressed: ${listed(over.map(words))}. Such a spring sets or breaks.`;
}

/** Rows of the table for people: every fourth place. */
const EVERY = 4;

export function pedalReport(study: PedalStudy, scenario: Scenario): Report {
  return {
    about: 'Pedal',
    scenario,
    answer: pedalSentences(study, scenario.lengthUnit),
    flags: [],
    sections: [
      { heading: 'Mind', items: PEDAL_CAUTIONS },
      { plots: [effortPlot(study, scenario.lengthUnit)] },
      { tables: [closingTable(study)], notes: CLOSING_NOTES },
      { tables: [effortTable(study, EVERY), springTable(study)] },
      { heading: 'What is not in it', items: limits(scenario) },
    ],
    outcomes: [],
  };
}

const CLOSING_NOTES = [
  'Without: the one part that is gone. Open: where in the travel least is left. Resistance: friction of the shafts that are still joined, and the pedal where the cable still hangs on them. Of springs alike one is gone.',
];
