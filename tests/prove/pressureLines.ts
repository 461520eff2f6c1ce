/** Thin hoses that carry a pressure to a sensor, and hoses that meet on a volume. */
import { magnitude } from '../../sim/acoustics/complex.ts';
import { fourPolePressure } from '../../sim/acoustics/fourPole.ts';
import {
  fourPoleLines,
  type Line,
  propagation,
  slowLag,
  volumeAdmittance,
} from '../../sim/acoustics/line.ts';
import { JetLaw } from '../../sim/acoustics/marchedBar.ts';
import { barLines, barResponse } from '../../sim/acoustics/pressureBar.ts';
import { atSensor, peakOf, phaseNear, restingAir, type SensorLine } from './cases/pressureLines.ts';
import { absolute, type Check, type Group, relative } from './check.ts';
import { hoseLimits } from './pressureLimits.ts';

const CUBIC_MM = 1e-9;
const CUBIC_CM = 1e-6;

/** One line of length [m] and bore [mm]; the volume [mm3]. */
function line(length: number, bore: number, volume = 300): SensorLine {
  const name = `${length} m of ${bore} mm bore to ${volume} mm3`;
  return { name, lines: [{ length, bore: bore / 1e3 }], volume: volume * CUBIC_MM };
}

function lines(...parts: [length: number, bore: number][]): SensorLine {
  const name = `${parts.map(([length, bore]) => `${length} m of ${bore} mm bore`).join(', then ')} to 300 mm3`;
  const own = parts.map(([length, bore]): Line => ({ length, bore: bore / 1e3 }));
  return { name, lines: own, volume: 300 * CUBIC_MM };
}

type Polar = readonly [ratio: number, degrees: number];

interface Response {
  line: SensorLine;
  /** Computed and printed height of the first peak, and where it was computed [Hz]. */
  peak?: readonly [height: number, frequency: number, printed: number];
  /** At 10, 50, 100, 200 Hz. */
  computed?: readonly Polar[];
  /** As printed, by frequency [Hz]. */
  printed?: Record<number, Polar>;
  /** Printed farther off than reading is taken to cost: where, where the theory has it [Hz], and print over theory. */
  misread?: { at: number; met: number; print: Polar; over: number };
}

/**
 * Lines of figures 9 to 18 of the report. Two points read off print lie farther off than reading it is
 * taken to cost, where curves fall steeply: 0.5 m of 1.5 mm at 200 Hz, 3.4 % below the theory, and 3 m of 1 mm at
 * 10 Hz, 6.5 % above it. Both have the theory's amplitude and phase at one frequency 6 and 1 Hz beside; peaks of the
 * same print are up to 4.4 Hz off, of an axis of 200 Hz. No one pressure, temperature or volume mends both.
 */
const RESPONSES: readonly Response[] = [
  {
    line: line(0.5, 1),
    peak: [1.5762, 75.18, 1.607],
    computed: polar('1.0121/-5.47 1.3270/-36.21 1.2582/-117.28 0.4679/-177.88'),
  },
  {
    line: line(0.5, 1.5),
    peak: [3.1941, 107.94, 3.208],
    computed: polar('1.0103/-1.74 1.2986/-11.80 3.0135/-63.32 0.8537/-169.55'),
    printed: { 50: [1.318, -11.9], 100: [2.984, -64.6] },
    misread: { at: 200, met: 206, print: [0.825, -171.5], over: 0.9664 },
  },
  {
    line: line(0.5, 2.5),
    peak: [6.0308, 137.08, 5.998],
    computed: polar('1.0079/-0.52 1.2021/-4.16 2.3316/-17.79 1.4954/-166.42'),
  },
  {
    line: line(1, 1),
    peak: [1.091, 32.14, 1.093],
    computed: polar('1.0162/-16.28 0.9716/-100.53 0.5310/-172.11 0.3577/-315.41'),
  },
  {
    line: line(1, 1.5),
    peak: [2.1475, 56.8, 2.152],
    computed: polar('1.0318/-5.90 2.0232/-60.98 0.9507/-161.35 1.1147/-279.60'),
    printed: { 50: [2.034, -60.7], 100: [0.95, -160.2], 200: [1.115, -276.7] },
  },
  {
    line: line(1, 2.5),
    peak: [4.1603, 69.21, 4.18],
    computed: polar('1.0291/-1.95 2.1631/-24.31 1.5267/-159.52 1.6625/-216.00'),
  },
  {
    line: line(3, 1),
    computed: polar('0.5946/-84.75 0.1988/-250.03 0.1113/-446.47 0.0431/-824.44'),
    misread: { at: 10, met: 9.05, print: [0.633, -79.3], over: 1.0646 },
  },
  {
    line: line(3, 2.5),
    peak: [2.1372, 21.37, 2.109],
    computed: polar('1.2517/-19.20 0.8469/-185.58 0.7356/-362.90 0.5857/-707.85'),
  },
  {
    line: line(1, 1.5, 100),
    peak: [2.2323, 62.69, 2.236],
    computed: polar('1.0274/-5.12 1.9025/-48.25 1.1403/-154.12 1.2857/-245.85'),
  },
  {
    line: line(1, 1.5, 1000),
    peak: [1.8434, 43.13, 1.838],
    computed: polar('1.0461/-8.68 1.6929/-104.30 0.5774/-174.24 0.4290/-320.06'),
  },
  { line: atAtmospheres(0.5), peak: [1.281, 46.4, 1.294] },
  { line: atAtmospheres(2), peak: [3.3631, 61.26, 3.362] },
  {
    line: lines([0.25, 1.5], [0.75, 2.5]),
    peak: [2.0479, 47.24, 2.042],
    computed: polar('1.0379/-6.50 2.0144/-87.40 0.5747/-162.08 1.0059/-250.58'),
  },
  {
    line: lines([0.75, 1.5], [0.25, 1]),
    peak: [2.266, 61.93, 2.284],
    computed: polar('1.0291/-6.40 1.9670/-56.75 1.2953/-168.92 0.6509/-318.94'),
  },
];

function polar(text: string): Polar[] {
  return text.split(' ').map((one) => one.split('/').map(Number) as [number, number]);
}

function atAtmospheres(atmospheres: number): SensorLine {
  const { name, ...rest } = line(1, 1.5);
  return { ...rest, name: `${name} at ${atmospheres} atm`, pressure: atmospheres * 101325 };
}

function responseChecks(response: Response): Check[] {
  const { line: of, peak, computed = [], printed = {}, misread } = response;
  return [
    ...computed.flatMap((at, i) => polarChecks(of, [10, 50, 100, 200][i]!, at, 'tubing')),
    ...Object.entries(printed).flatMap(([f, at]) => polarChecks(of, +f, at, 'tubingPrinted')),
    ...(misread ? misreadChecks(of, misread) : []),
    ...(peak ? peakChecks(of, peak) : []),
  ];
}

/** How far off it is at its own frequency, and that amplitude and phase are met at another. */
function misreadChecks(
  of: SensorLine,
  { at, met, print, over }: NonNullable<Response['misread']>,
): Check[] {
  return [
    {
      what: `guard of a known disagreement, no proof: ${of.name}, ${at} Hz: amplitude ratio as printed, ${print[0]}, over ours`,
      source: 'tubingPrinted',
      published: over,
      tolerance: absolute(5e-4),
      run: () => print[0] / magnitude(atSensor(of, at)),
    },
    ...polarChecks(of, met, print, 'tubingPrinted').map((check) => ({
      ...check,
      what: `${check.what}, printed at ${at} Hz`,
    })),
  ];
}

/** What was computed is told to four digits and 0.05 deg; a curve read off print to 3 % and 3 deg. */
function polarChecks(
  of: SensorLine,
  frequency: number,
  [ratio, degrees]: Polar,
  source: 'tubing' | 'tubingPrinted',
): Check[] {
  const computed = source === 'tubing';
  const place = `${of.name}, ${frequency} Hz`;
  return [
    {
      what: `${place}: amplitude ratio`,
      source,
      published: ratio,
      tolerance: computed ? absolute(2e-4) : relative(0.03),
      run: () => magnitude(atSensor(of, frequency)),
    },
    {
      what: `${place}: phase [deg]`,
      source,
      published: degrees,
      tolerance: absolute(computed ? 0.05 : 3),
      run: () => phaseNear(atSensor(of, frequency), degrees),
    },
  ];
}

function peakChecks(
  of: SensorLine,
  [height, frequency, printed]: NonNullable<Response['peak']>,
): Check[] {
  const upTo = 1.5 * frequency;
  const what = `${of.name}: first peak`;
  return [
    {
      what: `${what}, amplitude ratio`,
      source: 'tubing',
      published: height,
      tolerance: absolute(2e-4),
      run: () => peakOf(of, upTo).height,
    },
    {
      what: `${what} at [Hz]`,
      source: 'tubing',
      published: frequency,
      tolerance: absolute(0.02),
      run: () => peakOf(of, upTo).frequency,
    },
    {
      what: `${what}, amplitude ratio`,
      source: 'tubingPrinted',
      published: printed,
      tolerance: relative(0.03),
      run: () => peakOf(of, upTo).height,
    },
  ];
}

/** Shear wave number, then loss and phase per omega/c. */
const PROPAGATION = [
  [0.5, 4.65028, 4.81755],
  [1, 2.20821, 2.54126],
  [2, 0.92715, 1.55432],
  [5, 0.25843, 1.20136],
  [10, 0.1159, 1.10356],
  [20, 0.05497, 1.05208],
  [50, 0.02131, 1.02086],
] as const;

const propagationChecks = PROPAGATION.flatMap(([s, loss, phase]): Check[] => {
  const at = () => propagation(s, restingAir()).perWaveNumber;
  const what = `shear wave number ${s}`;
  const tolerance = absolute(1e-5);
  return [
    {
      what: `${what}: loss per omega/c`,
      source: 'tubing',
      published: loss,
      tolerance,
      run: () => at().re,
    },
    {
      what: `${what}: phase per omega/c`,
      source: 'tubing',
      published: phase,
      tolerance,
      run: () => at().im,
    },
  ];
});

/** Length [m], bore [mm], volume [cm3], lag [ms]. */
const LAGS = [
  [1, 1, 0.3, 4.4421],
  [1, 1.5, 0.3, 1.5871],
  [1, 1.5, 5, 6.4402],
  [0.5, 2, 5, 0.9964],
  [0.4, 3, 20, 0.5674],
  [0.4, 4, 50, 0.4371],
] as const;

const lagChecks = LAGS.flatMap(([length, bore, volume, lag]): Check[] => {
  const own = { length, bore: bore / 1e3 };
  const inside = volume * CUBIC_CM;
  const what = `lag of ${length} m of ${bore} mm bore to ${volume} cm3 [ms]`;
  return [
    {
      what: `${what}, slow limit in closed form`,
      source: 'tubingLag',
      published: lag,
      tolerance: relative(1e-4),
      run: () => 1e3 * slowLag(own, inside, restingAir()),
    },
    {
      what: `${what}, phase over frequency at 0.01 Hz`,
      source: 'tubing',
      published: lag,
      tolerance: relative(1e-4),
      run: () => {
        const { re, im } = atSensor({ name: '', lines: [own], volume: inside }, 0.01);
        return (1e3 * Math.atan2(-im, re)) / (2 * Math.PI * 0.01);
      },
    },
  ];
});

const FREQUENCIES = [7.5, 30, 60, 100, 200];

/** Four hoses of length [m] and bore [mm] on a volume [cm3]: one far end alone, then all in phase. */
const BARS = [
  [0.3, 2, 10, '0.2519/1.0074 0.2818/1.1271 0.4274/1.7097 0.8552/3.4207 0.0960/0.3841'],
  [0.3, 3, 10, '0.2510/1.0040 0.2656/1.0624 0.3196/1.2786 0.5667/2.2667 0.2798/1.1193'],
  [0.4, 4, 50, '0.2531/1.0123 0.3027/1.2108 0.6873/2.7493 0.3702/1.4807 0.0666/0.2663'],
  [0.4, 4, 200, '0.2609/1.0435 0.6008/2.4030 0.1928/0.7713 0.0527/0.2109 0.0166/0.0665'],
] as const;

const barChecks = BARS.flatMap(([length, bore, volume, text]) =>
  text.split(' ').flatMap((pair, i): Check[] => {
    const [alone, together] = pair.split('/').map(Number) as [number, number];
    const hose = { length, bore: bore / 1e3 };
    const bar = { hoses: 4, hose, volume: volume * CUBIC_CM, sensor: { volume: 0 } };
    const what = `4 hoses of ${length} m of ${bore} mm bore on ${volume} cm3, ${FREQUENCIES[i]} Hz`;
    const of = () => magnitude(barResponse(barLines(bar, FREQUENCIES[i]!, restingAir()), 0).bar);
    const tolerance = absolute(2e-4);
    return [
      {
        what: `${what}: one far end alone`,
        source: 'tubing',
        published: alone,
        tolerance,
        run: of,
      },
      {
        what: `${what}: all in phase`,
        source: 'tubing',
        published: together,
        tolerance,
        run: () => 4 * of(),
      },
    ];
  }),
);

const printedChecks = (['re', 'im'] as const).map(
  (part, i): Check => ({
    what: `0.7 m of 1 mm bore to 10 mm3 at 93 kPa and 20 degC, 300 Hz: ${['real', 'imaginary'][i]} part`,
    source: 'tubingCode',
    published: [-0.0857501062, 0.9362983309][i]!,
    // Half a unit of the last digit printed, and what R and viscosity are rounded to.
    tolerance: absolute(1e-8),
    run: () => {
      const gas = restingAir(293.15, 93000);
      const chain = fourPoleLines([{ length: 0.7, bore: 0.001 }], 300, gas);
      return fourPolePressure(chain, volumeAdmittance(10 * CUBIC_MM, 300, gas))[part];
    },
  }),
);

/** Air at 20 degC and 101325 Pa, R 287.05: what a jet of 1 mm2 passes, choked and at a ratio of 0.8. */
const jetChecks: Check[] = (
  [
    ['choked', 0.5, 0.23917, relative(1e-4)],
    // The ellipse of ISO 6358-1 lies within 0.31 % of the isentropic law, 0.56066 for 0.684731 there.
    ['to 0.8 of the pressure', 0.8, (0.23917 * 0.56066) / 0.684731, relative(0.0031)],
  ] as const
).map(([where, ratio, published, tolerance]) => ({
  what: `jet of 1 mm2 effective area, 101.325 kPa, 20 degC, ${where}: flow [g/s]`,
  source: 'nozzleFlow',
  published,
  tolerance,
  run: () => {
    const bore = Math.sqrt(4e-6 / Math.PI);
    const law = new JetLaw({ bore, coefficient: 1 }, restingAir(293.15));
    return 1e3 * law.flow(101325, ratio * 101325);
  },
}));

export const pressureLines: Group = {
  name: 'Pressure hoses',
  checks: [
    ...printedChecks,
    ...RESPONSES.flatMap(responseChecks),
    ...propagationChecks,
    ...lagChecks,
    ...barChecks,
    ...jetChecks,
    ...hoseLimits,
  ],
};
