/** Mixture cylinder by cylinder, in words. */
import { type Share, UNTOLD } from '../../decision/family.ts';
import { rpm, share } from '../../report/figures.ts';
import { brief, listed } from '../../report/numbers.ts';
import {
  LAMBDA,
  PLATE,
  PLATE_DOUBT,
  PLATE_ERROR,
  signedShare,
  TORQUE_LOST,
  told,
} from '../../report/quantities.ts';
import type { Report } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import { alikeCautions } from '../cylinders.ts';
import { leverNotes } from '../lever.ts';
import type { LoadMixture, TrimsStudy } from './compute.ts';
import { leanestLoad, mixturePlot } from './figure.ts';
import { cylindersTable, loadsTable, probesTable, readingsTable } from './tables.ts';

/** Chi squared a degree of freedom above which the stated doubts do not explain the readings; our own mark. */
const MISFIT_WARNED = 3;
/** An error counts as there beyond so many of its standard deviations. */
const SEEN = 2;

export function trimsSentences(study: TrimsStudy): string[] {
  return [
    leanWords(study),
    platesWords(study),
    injectorsWords(study),
    probesWords(study),
    jointWords(study),
    costWords(study),
  ];
}

const signed = (value: number) => told(signedShare('', ''), value);
const at = ({ speed, angle }: LoadMixture) => `${rpm(speed)} and ${told(PLATE, angle)}`;

/** The load with the greatest charge, or with the least. */
function loadBy(loads: TrimsStudy['loads'], sign: 1 | -1): LoadMixture {
  return loads.reduce((far, one) => (sign * one.charge > sign * far.charge ? one : far));
}

function leanWords({ loads }: TrimsStudy): string {
  const far = leanestLoad(loads);
  const most = loadBy(loads, 1);
  const words = ({ leanest, lean, joint }: LoadMixture) =>
    `${leanest + 1} with lambda ${told(LAMBDA, lean)}, all gas together ${told(LAMBDA, joint)}`;
  return (
    `Farthest on the lean side is cylinder ${words(far)}, at ${at(far)}. At the greatest load read, ` +
    `${at(most)}, it is cylinder ${words(most)}: there the lean one knocks and burns its piston first, so ` +
    'richen it before that load is held any longer.'
  );
}

/** Those that stand out, the farthest first. */
function seen(family: readonly Share[]): number[] {
  return [...family.keys()]
    .filter((i) => Math.abs(family[i]!.value) > SEEN * family[i]!.deviation)
    .sort((a, b) => Math.abs(family[b]!.value) - Math.abs(family[a]!.value));
}

function platesWords({ shares: { plates, left } }: TrimsStudy): string {
  if (plates.length < 2) return '';
  if (left.plates > UNTOLD) {
    return (
      'These loads say next to nothing of the plates: a plate shows where it is all but shut. Add ' +
      'readings at idle and a little above it.'
    );
  }
  const words = seen(plates).map((i) => {
    const { value, deviation } = plates[i]!;
    return `${i + 1} by ${told(PLATE_ERROR, value)} +- ${told(PLATE_DOUBT, deviation)}`;
  });
  if (words.length === 0) return 'Plates stand alike as far as these readings can tell.';
  return (
    `Air that goes away as the plates open: cylinder ${listed(words)} against the mean of all, plus ` +
    'being open too far. Set plates and bleeds first; trims of fuel at small openings only hide them.'
  );
}

function injectorsWords({ shares: { injectors, left }, stays }: TrimsStudy): string {
  if (injectors.length < 2) return '';
  if (left.injectors > UNTOLD) {
    return (
      'What stays at every load cannot be told from the plates here: all readings are at openings where ' +
      'plates count. Add a load with the plates well open, 20 deg above the stop or more.'
    );
  }
  const words = seen(injectors).map((i) => {
    const { value, deviation } = injectors[i]!;
    return `${i + 1} gives ${signed(value)} +- ${share(deviation)} and wants ${signed(stays[i]!)}`;
  });
  const also =
    'An injector and whatever makes one cylinder breathe alike at every load, such as cam, compression ' +
    'or trumpet, look the same and want the same trim.';
  return words.length === 0
    ? `Injectors give alike as far as these readings can tell. ${also}`
    : `Fuel that stays wrong at every load: cylinder ${listed(words)}. ${also}`;
}

function probesWords({ shares: { probes, left }, question }: TrimsStudy): string {
  if (probes.length < 2) return 'One probe read all, so its error is common and moves no trim.';
  if (left.probes > UNTOLD) {
    return (
      `Each probe stayed in its pipe, so its error of some ${share(question.doubts.probe)} cannot be told ` +
      'from the injector there and is in the doubt of the trims. Change the probes round between pipes, ' +
      'read again and add the rows with the number of the probe.'
    );
  }
  const words = seen(probes).map((k) => {
    const { value, deviation } = probes[k]!;
    return `${question.probes[k]} by ${signed(value)} +- ${share(deviation)}`;
  });
  return words.length === 0
    ? 'Probes read alike as far as these readings can tell.'
    : `Probes that read too lean, plus, or too rich: ${listed(words)}.`;
}

function jointWords({ loads }: TrimsStudy): string {
  const load = leanestLoad(loads);
  return (
    `One probe in the joint would have read ${told(LAMBDA, load.joint)} at ${at(load)} and shown nothing ` +
    `wrong: it sees the mean, and of one cylinder's swing ${share(load.swingLeft, 0)} at that speed.`
  );
}

function costWords({ loads }: TrimsStudy): string {
  const known = loads.filter(({ loss }) => loss !== undefined);
  if (known.length === 0) return '';
  const [most, least] = [loadBy(known, 1), loadBy(known, -1)];
  const words = (load: LoadMixture) =>
    `${told(TORQUE_LOST, load.loss!)} of the torque at ${at(load)}`;
  const little = most === least ? '' : ` and ${words(least)}, of which there is little`;
  return `Left as it is, the spread costs ${words(most)}${little}; by the mixture curve of one published engine.`;
}

function misfitFlags({ shares: { misfit } }: TrimsStudy): string[] {
  if (misfit <= MISFIT_WARNED) return [];
  return [
    `The readings differ more than the stated doubts explain (chi squared ${brief(misfit, 2)} a degree of ` +
      'freedom): look for a leak, a probe near an open pipe end, a cylinder that misfires, or state larger doubts.',
  ];
}

export const TRIM_CAUTIONS: readonly string[] = [
  'A lean cylinder at load burns pistons and valves within seconds. Start from rich, watch every cylinder, and lift off when one goes lean.',
  'A misfiring cylinder sends its air on unburned and reads lean: more fuel is then the wrong answer. Find out whether it fires first.',
  'Air drawn in at a slipping joint or slipped back from a short open pipe reads lean. Seal every joint before the probe, and keep the probe deeper than gas flows back in a cycle, or read in the primary.',
  'Exhaust gas kills indoors: lead it outside and have a carbon monoxide alarm. Pipes and probes burn hands; weld bosses with the engine cold and the battery off.',
  'Who may change the mixture of a vehicle on the road, and what its exhaust may hold, is for local law and licensed practice.',
];

const NOTES: readonly string[] = [
  'Plus or minus is one standard deviation. Doubts that the file does not state are taken from common practice: plates 0.2 deg, injectors 2 %, probes 1 %, a reading 0.5 %.',
  'How air answers to a plate is computed from the volume behind it, without waves, and counts as known to a fifth at each load.',
];

export function trimsReport(study: TrimsStudy, scenario: Scenario): Report {
  const { doubts, fromGases } = study.question;
  const gases = fromGases
    ? ['Lambda was worked out from the gases by Brettschneider, hydrocarbons as hexane, dry gas.']
    : [];
  const stated = `Doubts used: plates ${told(PLATE_DOUBT, doubts.plate)}, injectors ${share(doubts.injector)}, probes ${share(doubts.probe)}, a reading ${share(doubts.repeatability)}.`;
  return {
    about: 'Mixture by cylinder',
    scenario,
    answer: trimsSentences(study),
    flags: [
      ...misfitFlags(study),
      ...leverNotes(scenario.engine),
      ...alikeCautions(scenario.engine),
    ],
    sections: [
      { plots: [mixturePlot(study)] },
      { tables: [cylindersTable(study), loadsTable(study)] },
      { tables: [probesTable(study)] },
      { tables: [readingsTable(study)], notes: [...gases, stated, ...NOTES] },
      { heading: 'Mind', items: TRIM_CAUTIONS },
    ],
    outcomes: [],
  };
}
