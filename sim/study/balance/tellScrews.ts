/** From readings to screws, in words. */
import { UNTOLD } from '../../decision/family.ts';
import type { PlateLoad } from '../../decision/plateAnswer.ts';
import { rpm, share } from '../../report/figures.ts';
import { brief, counted, listed } from '../../report/numbers.ts';
import {
  BLEED_DOUBT,
  PLATE,
  PLATE_DOUBT,
  signedShare,
  TURNS,
  TURNS_DOUBT,
  told,
} from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { alikeCautions } from '../cylinders.ts';
import { leverNotes } from '../lever.ts';
import { BALANCE_CAUTIONS } from './cautions.ts';
import { airPlot } from './figure.ts';
import { degreesPerTurn, type ScrewsStudy, type Turn, worthTurning } from './screws.ts';
import {
  bodiesTable,
  gaugesTable,
  loadsTable,
  readingsTable,
  turnsTable,
  wayOf,
} from './tables.ts';

/** Chi squared a degree of freedom above which the stated doubts do not explain the readings; our own mark. */
const MISFIT_WARNED = 3;

export function screwsSentences(study: ScrewsStudy): string[] {
  return [
    worstWords(study),
    stopWords(study),
    bleedWords(study),
    gaugeWords(study),
    leftWords(study),
  ];
}

const at = ({ speed, angle, bleedShut = false }: PlateLoad) =>
  `${rpm(speed)} and ${told(PLATE, angle)}${bleedShut ? ', bleeds shut' : ''}`;

function worstWords({ errors, question }: ScrewsStudy): string {
  const worst = errors.readings.reduce((far, one) =>
    Math.abs(one.air) > Math.abs(far.air) ? one : far,
  );
  const { before } = errors.remainders[worst.state]!;
  return (
    `Farthest off is body ${worst.body + 1}: ${told(signedShare('', ''), worst.air)} of air against the ` +
    `mean of all, +- ${share(worst.deviation)}, at ${at(question.states[worst.state]!)}, where bodies ` +
    `spread by ${share(before)}.`
  );
}

function turnWords({ body, turns, deviation }: Turn): string {
  return `${body + 1} ${wayOf(turns)} by ${told(TURNS, Math.abs(turns)).replace('+', '')} +- ${told(TURNS_DOUBT, deviation)}`;
}

function stopWords({ turns, errors, question }: ScrewsStudy): string {
  if (errors.left.plates > UNTOLD) {
    return (
      'These readings say next to nothing of the plates alone. Screw every bleed shut, open the stops until ' +
      'the engine runs on its plates, and read there: bleeds 0 in those rows.'
    );
  }
  const { screws } = question;
  const stay = screws.master > 0 ? `; body ${screws.master} stays, for its stop does not move` : '';
  const due = turns.filter((turn) => turn.screw === 'stop' && worthTurning(turn));
  if (due.length === 0)
    return `No stop screw wants turning by what these readings can tell${stay}.`;
  return (
    `Plates first, the farthest off first: turn stop screw ${listed(due.map(turnWords), 16)} turns${stay}. ` +
    `A turn is ${told(PLATE, degreesPerTurn(screws))}, and in opens.`
  );
}

function bleedWords({ turns, errors, question }: ScrewsStudy): string {
  if (question.wholeBleed === 0) {
    return (
      'Neither scenario nor readings tell of bleeds, so all that is wrong at idle counts as plate. Where ' +
      'there are bleed screws, state bleedBore.'
    );
  }
  if (errors.left.bleeds > UNTOLD) {
    return (
      'What these readings cannot tell is bleed from plate, for both leave nearly the same area at every ' +
      'opening: read once more with every bleed screwed shut, bleeds 0 in those rows.'
    );
  }
  const due = turns.filter((turn) => turn.screw === 'bleed' && worthTurning(turn));
  if (due.length === 0) return 'No bleed screw wants turning by what these readings can tell.';
  return `Then bleeds, back at idle: turn bleed screw ${listed(due.map(turnWords), 16)} turns; in shuts.`;
}

function gaugeWords({ errors, question }: ScrewsStudy): string {
  if (errors.gauges.length < 2)
    return 'One gauge read all, so its error is common and moves no screw.';
  if (errors.left.gauges > UNTOLD) {
    return (
      `Each gauge stayed at its body, so its error of some ${share(question.doubts.gauge)} is in the doubt. ` +
      'Change gauges round, read again and add the rows.'
    );
  }
  return '';
}

function leftWords({ errors, question }: ScrewsStudy): string {
  const words = question.states.map((state, j) => {
    const { after, seen } = errors.remainders[j]!;
    const side = after < seen ? 'less than' : 'more than';
    const hidden = share(after) === share(seen) ? 'about' : side;
    return `${share(after)} at ${at(state)}, ${hidden} the ${share(seen)} that the gauge shows there`;
  });
  return `Turned so, doubt and the steps of the screws leave a spread of air of ${listed(words)}. Read again and go round once more.`;
}

function flags({ errors, question }: ScrewsStudy): string[] {
  const { misfit } = errors;
  return misfit <= MISFIT_WARNED
    ? []
    : [
        `The ${counted(question.readings.length, 'reading')} differ more than the stated doubts explain (chi squared ` +
          `${brief(misfit, 2)} a degree of freedom): look for a leak, a pipe that joins the ports, a valve that ` +
          'leaks, a slack shaft, or state larger doubts.',
      ];
}

export function screwsReport(study: ScrewsStudy, scenario: Scenario): Report {
  const { doubts, screws, wholeBleed } = study.question;
  const bleed = wholeBleed === 0 ? '' : `, bleeds ${told(BLEED_DOUBT, doubts.bleed)}`;
  const stated = `Doubts used, one standard deviation: plates ${told(PLATE_DOUBT, doubts.plate)}${bleed}, gauges ${share(doubts.gauge)}, a reading ${share(doubts.repeatability)}. A bleed opens evenly over ${brief(screws.bleedTurns)} turns.`;
  return {
    about: 'Balance of the bodies',
    scenario,
    answer: screwsSentences(study),
    flags: [...flags(study), ...leverNotes(scenario.engine), ...alikeCautions(scenario.engine)],
    sections: [
      { plots: [airPlot(study)] },
      { tables: [turnsTable(study), bodiesTable(study)] },
      { tables: [loadsTable(study), gaugesTable(study)] },
      { tables: [readingsTable(study)], notes: [stated, ...NOTES] },
      { heading: 'Mind', items: BALANCE_CAUTIONS },
    ],
    outcomes: [],
  };
}

const NOTES: readonly string[] = [
  'Air and mean vacuum answer to plate and bleed as computed from the volume behind the plate, without waves; a fifth to a quarter of that answer counts as in doubt.',
  'Screws are set to a sixteenth of a turn. What a stop screw cannot be set to, the bleed takes at idle: read there last.',
];
