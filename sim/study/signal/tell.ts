/** What the pressure sensor sees, in sentences. */

import { resonanceOf, type TriedBar } from '../../acoustics/barTrial.ts';
import type { LengthUnit } from '../../decision/lengthUnit.ts';
import { cylindersDiffer } from '../../engine/manifolds.ts';
import { inMilliseconds, rpm, share, sizeIn } from '../../report/figures.ts';
import { counted } from '../../report/numbers.ts';
import { told } from '../../report/quantities.ts';
import type { Report, Section } from '../../report/report.ts';
import type { Scenario } from '../../scenario/resolve.ts';
import type { EngineSpecification } from '../../specification.ts';
import { pointCautions } from '../cautions.ts';
import { leadCautions } from '../cylinders.ts';
import { leverNotes } from '../lever.ts';
import type { SignalStudy } from './compute.ts';
import { barDrawing } from './drawing.ts';
import * as figure from './figure.ts';
import type { LoadSense } from './load.ts';
import type { PlateError } from './plateError.ts';
import { worseThough } from './search.ts';
import * as t from './tables.ts';
import type { SignalPoint } from './tapped.ts';

/** Said wherever hoses on runners are spoken of. */
export const HOSE_CAUTIONS: readonly string[] = [
  'Take hose that stands petrol vapour, oil, heat and suction, clip every end, and keep it off the exhaust: one that comes off is an air leak that leans its cylinder and can hold the idle up.',
  'Work on nipples with the engine cold and stopped. After it, see that every plate still shuts by itself before the engine is started.',
  'Set fuel and ignition by what is measured at every cylinder on a dynamometer; these figures only say what the sensor is given to read.',
  'What may be done to a road vehicle or at an event, local rules and licensed practice say; they come before anything here.',
];

/** What the figures rest on. */
function assumed(engine: EngineSpecification): string {
  const alike = cylindersDiffer(engine)
    ? 'Without the bar the pressure of one runner stands for all, each in its turn.'
    : 'Cylinders are taken as alike.';
  return (
    `${engine.cylinder.count > 1 ? `${alike} ` : ''}The bar of the file is computed with the engine, all cylinders and hoses together; other bars are ` +
    'tried on the pressure that runners have without one. The sensor itself is taken as quick. ' +
    "The solver's mesh is coarse here: 40 mm in the intake and in the hoses."
  );
}

const kPa = (value: number) => told({ ...t.RIPPLE, digits: 3, finest: 2 }, value);
const off = (value: number) => told({ ...t.OFFSET, digits: 3, finest: 2 }, value);
/** A reading beside the true one [Pa]. */
const astray = (value: number) => `${kPa(Math.abs(value))} ${value < 0 ? 'low' : 'high'}`;
const plate = (angle: number) => told(t.ANGLE, angle);
const place = ({ speed, angle }: { speed: number; angle: number }) =>
  `${rpm(speed)}, plate at ${plate(angle)}`;
const lagText = (lag: number) =>
  Number.isFinite(lag) ? inMilliseconds(lag, 1) : 'longer than was watched';

type Bar = TriedBar['bar'];

function hosesAndJets({ hose, jet }: Bar, unit?: LengthUnit): string {
  const open = jet!.bore >= hose.bore;
  const end = open ? 'no jets' : `jets of ${sizeIn(jet!.bore, unit)}`;
  return `hoses of ${sizeIn(hose.bore, unit)}, ${end}`;
}

const sizes = (bar: Bar, unit?: LengthUnit) =>
  `${hosesAndJets(bar, unit)}, ${told(t.VOLUME, bar.volume)}`;

/** The answer, then what stands behind it. */
export function signalSentences(study: SignalStudy, unit?: LengthUnit): string[] {
  return [
    ownWords(study, unit),
    bestWords(study, unit),
    biggerWords(study, unit),
    ...offsetWords(study),
    ...loadWords(study),
    aloneWords(study),
    ...crossingWords(study),
  ];
}

const worstOf = (points: readonly SignalPoint[], of: (point: SignalPoint) => number) =>
  points.reduce((worst, point) => (of(point) > of(worst) ? point : worst), points[0]!);

function ownWords({ points, bar, answer, spec, step }: SignalStudy, unit?: LengthUnit): string {
  const [idle] = points;
  const worst = worstOf(points, (point) => point.joined.ripple);
  const late = answer.lag <= spec.mostLag ? 'within' : 'beyond';
  return (
    `The bar of the file (${sizes(bar, unit)}): at idle (${place(idle!)}) a runner swings by ` +
    `${kPa(idle!.swing)} and the sensor by ${kPa(idle!.joined.ripple)}; at worst the sensor swings by ` +
    `${kPa(worst.joined.ripple)}, at ${place(worst)}. Plates snapped open from ${kPa(step.from)} reach it in ` +
    `${lagText(answer.lag)} from 10 to 90 %, ${late} the ${inMilliseconds(spec.mostLag, 1)} that the file allows.`
  );
}

function bestWords({ search, confirmed, spec }: SignalStudy, unit?: LengthUnit): string {
  const { best, tried } = search;
  const allowed = inMilliseconds(spec.mostLag, 1);
  if (!best || !confirmed) {
    return `None of the ${counted(tried.length, 'bar')} tried is there within ${allowed}: shorten the hoses or allow a longer lag.`;
  }
  return (
    `Smallest ripple within a lag of ${allowed}, of ${counted(tried.length, 'bar')} tried with hoses as long: ` +
    `${sizes(best.bar, unit)}. It takes ${lagText(best.lag)}, and with jets by their own law it swings by ` +
    `${kPa(confirmed.ripple)} at worst (${place(confirmed.worst)}; linear theory, by which it was chosen, says ` +
    `${kPa(confirmed.linearRipple)} there) and reads ${astray(confirmed.offset)}.`
  );
}

/** A bigger bar is not a smoother one: where it is not, or that no case was found. */
function biggerWords(study: SignalStudy, unit?: LengthUnit): string {
  const { search, bar, points, volumes, cylinders } = study;
  const { frequency, height } = resonanceOf(bar, points[0]!.gas);
  const fires = rpm(Math.round((frequency * 120) / cylinders));
  const rings =
    `Jets aside, the file's own hoses and volume ring at ${told(t.RESONANCE, frequency)}, ${height.toFixed(1)} times ` +
    `what the runners do in phase; at ${fires} cylinders fire that often.`;
  const [own] = worseThough(volumes);
  const [any] = search.worseThough;
  if (!any && !own) return `No bigger bar tried swings more than the next smaller one. ${rings}`;
  const { smaller, bigger } = (own ?? any)!;
  const whose = own
    ? "with the file's own hoses and jets"
    : `with ${hosesAndJets(bigger.bar, unit)}`;
  return (
    `A bigger bar is not always a smoother one: ${whose}, ${told(t.VOLUME, bigger.bar.volume)} swings by ` +
    `${kPa(bigger.ripple)} at worst where ${told(t.VOLUME, smaller.bar.volume)} swings by ${kPa(smaller.ripple)}. Of all ` +
    `bars tried ${search.worseThough.length === 1 ? '1 swings' : `${search.worseThough.length} swing`} more than the same on the next smaller volume. ${rings}`
  );
}

/** Jets let gas in and out by a law that is no straight line, so the bar's mean is not the runners'. */
function offsetWords({ points, spec }: SignalStudy): string[] {
  const worst = worstOf(points, ({ joined }) => Math.abs(joined.offset));
  const [idle] = points;
  const apart = (of: (point: SignalPoint) => number) => {
    const ratios = points.map((point) => of(point) / point.joined.ripple);
    const [least, most] = [Math.min(...ratios).toFixed(1), Math.max(...ratios).toFixed(1)];
    return least === most ? least : `${least} to ${most}`;
  };
  return [
    `The mean of the bar is not the mean of ${spec.hoses > 1 ? 'the runners' : 'the runner'}: a hole passes gas by the root of the difference, so short ` +
      `deep pulses count for less than they do in the mean. At idle it reads ${astray(idle!.joined.offset)}, at worst ${astray(worst.joined.offset)} ` +
      `(${place(worst)}). Linear theory knows nothing of that, and its ripple is ${apart(({ bar }) => bar.linearRipple)} times what the ` +
      `engine with its bar gives; hoses in time on a pressure given at the nipples, ${apart(({ bar }) => bar.ripple)} times.`,
  ];
}

/** Less than this rounds to nothing [-]. */
const LEAST_MISSING = 0.005;

function blindWords({ speed, blindFrom, missing = 0 }: LoadSense): string {
  if (blindFrom === undefined) return `${rpm(speed)}: at every angle`;
  const rest =
    missing >= LEAST_MISSING
      ? `${share(missing, 0)} of the air still missing`
      : 'all the air there';
  return `${rpm(speed)}: from ${told(t.BLIND_FROM, blindFrom)} on, with ${rest}`;
}

function loadWords({ load, spec, boosted }: SignalStudy): string[] {
  const worst = load.reduce(
    (far, one) => (Math.abs(one.atWidest) > Math.abs(far.atWidest) ? one : far),
    load[0]!,
  );
  return [
    `Pressure no longer tells load, within ${kPa(spec.resolution)} of its value at the widest opening, at ${load.map(blindWords).join('; ')}. ` +
      'Let the fuel table go over to the plate angle before that.',
    boosted
      ? `As a barometer: key on, the sensor reads the day. Under boost it reads what feeds the runners: ${kPa(worst.atWidest)} above the day at ${rpm(worst.speed)}, plate at its widest.`
      : `As a barometer: key on, the sensor reads the day. At the widest opening it reads at worst ${astray(worst.atWidest)}, at ${rpm(worst.speed)}.`,
  ];
}

function aloneWords({ points, spec }: SignalStudy): string {
  const [idle] = points;
  const worst = worstOf(points, ({ windowOffset }) => Math.abs(windowOffset));
  const filter = Number.isFinite(idle!.filterWorth)
    ? `a filter of ${inMilliseconds(idle!.filterWorth, 0)} would be needed to be as steady as the bar`
    : 'no filter is as steady as the bar';
  return (
    `${spec.hoses > 1 ? 'One runner alone' : 'Without the bar'}: a sensor on ${spec.hoses > 1 ? 'its' : 'the'} hose swings by ${kPa(idle!.alone.ripple)} at idle; filtered by ` +
    `${inMilliseconds(spec.filter, 0)} it still swings by ${kPa(idle!.filtered)}, and ${filter}. Read over a crank window it ` +
    `repeats from cycle to cycle, but reads up to ${astray(worst.windowOffset)} (${place(worst)}), and ` +
    `ten degrees of window move it by ${off(idle!.windowSlope)} at idle.`
  );
}

function crossingWords({ points, plateError, spec, cylinders }: SignalStudy): string[] {
  if (cylinders < 2) {
    return [
      'One cylinder draws once in two turns, and no hose beside its own fills the gap: only a long lag makes that steady.',
    ];
  }
  if (spec.hoses < 2) return ['With one hose nothing crosses from cylinder to cylinder.'];
  const [idle] = points;
  const gross =
    `At idle ${share(idle!.joined.crossing)} of a cylinder's air goes out of its runner into the hose and comes back each ` +
    'cycle; cylinders alike lose none of it.';
  return plateError ? [gross, plateErrorWords(plateError, spec)] : [gross];
}

/** Of the difference that a gauge shows this much is left where hoses may stay on while plates are balanced [-]. */
const CLEAR = 0.8;

function plateErrorWords(one: PlateError, spec: SignalStudy['spec']): string {
  const { alone, joined, given, got, lambda, unseen, moreAir } = one;
  const left = joined.pressure / alone.pressure;
  const balance =
    left < CLEAR
      ? 'Balance the bodies with the hoses clamped between gauge and bar'
      : 'Bodies can be balanced with the bar fitted, gauges on nipples of their own';
  return (
    `With plates alike the bar changes the air of the idle by ${told(t.MORE_AIR, moreAir)}. ` +
    `One plate ${plate(spec.plateError)} further open takes ${share(alone.air)} more air than the others and stands ` +
    `${kPa(alone.pressure)} higher; with the bar fitted ${share(joined.air)} and ${kPa(joined.pressure)}, as ${share(given, 2)} of its ` +
    `gas goes to the others, ${share(got, 2)} more for each. Where all have equal fuel and the mixture is right in common, its lambda ` +
    `is ${told(t.LAMBDA, lambda.one)} and theirs ${told(t.LAMBDA, lambda.others)}. Gauges on joined runners show ${share(left, 0)} of the difference: ` +
    `what they tell, ${kPa(spec.resolution)}, is a plate ${told(t.UNSEEN, unseen.joined)} off in place of ${told(t.UNSEEN, unseen.alone)}. ${balance}.`
  );
}

export function signalReport(study: SignalStudy, scenario: Scenario): Report {
  return {
    about: 'Pressure signal',
    scenario,
    answer: signalSentences(study, scenario.lengthUnit),
    flags: [
      ...leverNotes(scenario.engine),
      ...pointCautions([{ name: 'the signal', outcomes: study.outcomes }]),
      ...leadCautions(scenario.engine),
      assumed(scenario.engine),
    ],
    sections: [
      { heading: 'Mind', items: HOSE_CAUTIONS },
      {
        pictures: [barDrawing(scenario.engine, study.spec, scenario.lengthUnit)],
        plots: [
          figure.cyclePlot(study),
          figure.rippleMap(study),
          figure.ripplePlot(study, 'bar'),
          figure.ripplePlot(study, 'alone'),
          figure.choicePlot(study),
          figure.loadPlot(study),
        ],
      },
      ...tables(study),
    ],
    outcomes: study.outcomes,
  };
}

function tables(study: SignalStudy): Section[] {
  return [
    {
      tables: [t.pointsTable(study)],
      notes: [
        'Ripple: peak to peak at the sensor, bar and engine computed together; given: hoses alone in time, on the ' +
          'pressure that runners have without them; linear: by the exact theory of thin lines on that pressure, jets made ' +
          'linear. Offset: mean reading less the mean behind the plates. Crosses: gas out of a runner into its hose and ' +
          'back, of the air of its cylinder. Lag: from 10 to 90 % when runners step from the mean here to the day. VE, mean and swing without the bar.',
      ],
    },
    {
      tables: [t.aloneTable(study)],
      notes: [
        'Window: mean over the crank window less the true mean; 10 deg on: what a window ten degrees later reads ' +
          'more. Filter worth: the time constant that makes it as steady as the bar.',
      ],
    },
    {
      tables: [t.volumesTable(study)],
      notes: [
        'Resonance: of hoses and volume alone, all runners in phase. Lag -: longer than was watched.',
      ],
    },
    {
      tables: [t.unbeatenTable(study)],
      notes: [
        'Each a tenth steadier than the one before, and the best; all that were tried are in signal-bars.csv.',
      ],
    },
    { tables: [t.plateErrorTable(study) ?? [], t.loadTable(study)].flat() },
  ];
}
