/** The demo scenarios on a coarse mesh, with few lengths and speeds: cheap enough for every run. */
import { parseDocument } from 'yaml';
import type { Demo } from '../scenario.ts';
import { demoText } from '../toy.ts';

export const DEMOS: readonly Demo[] = [
  'hill-climb',
  'sprint-single',
  'endurance-six',
  'boosted-four',
];

/** Those whose cylinders differ; goldens of a few commands only. */
export const UNEVEN = ['cross-plane-eight', 'uneven-twin'] as const;

/** That whose runners are joined; goldens of the commands that ask for it. */
export const JOINED = ['road-four'] as const;

export type GoldenDemo = Demo | (typeof UNEVEN)[number] | (typeof JOINED)[number];

/** Speeds below, twice in and above the band, and two lengths besides the one fitted now. */
const QUESTIONS: Record<GoldenDemo, { speeds: string[]; lengths: string[] }> = {
  'hill-climb': {
    speeds: ['4800 rpm', '6000 rpm', '7000 rpm', '8200 rpm'],
    lengths: ['120 mm', '180 mm'],
  },
  'sprint-single': {
    speeds: ['8000 rpm', '10000 rpm', '12000 rpm', '13000 rpm'],
    lengths: ['3 in', '5 in'],
  },
  'endurance-six': {
    speeds: ['3000 rpm', '5000 rpm', '6500 rpm', '8000 rpm'],
    lengths: ['200 mm', '300 mm'],
  },
  'boosted-four': {
    speeds: ['4000 rpm', '5000 rpm', '6000 rpm', '7000 rpm'],
    lengths: ['100 mm', '200 mm'],
  },
  'cross-plane-eight': {
    speeds: ['4000 rpm', '5600 rpm', '6600 rpm', '7400 rpm'],
    lengths: ['80 mm', '180 mm'],
  },
  'road-four': {
    speeds: ['2000 rpm', '3500 rpm', '5000 rpm', '6500 rpm'],
    lengths: ['60 mm', '200 mm'],
  },
  'uneven-twin': {
    speeds: ['5000 rpm', '6400 rpm', '7600 rpm', '9000 rpm'],
    lengths: ['60 mm', '140 mm'],
  },
};

/** Values by their keys, joined by dots, as a file would say them; undefined: not said at all. */
export type Said = Record<string, unknown>;

/** What makes a demo cheap. */
function cheapKeys(demo: GoldenDemo): Said {
  const { speeds, lengths } = QUESTIONS[demo];
  return {
    speeds: { at: speeds },
    'sweep.lengths': { at: lengths },
    numerics: { intakeCell: '25 mm', exhaustCell: '60 mm', settle: 0.01, maximumCycles: 8 },
    ...(demo === 'endurance-six' && { 'fit.shelf': ['150 mm', '250 mm'] }),
  };
}

const TEXTS = new Map<string, string>();

/** The text of a cheap demo, with more keys said otherwise; made once of the same. */
export function cheapText(demo: GoldenDemo, said: Said = {}): string {
  const key = JSON.stringify([demo, said], (_, value) =>
    value === undefined ? 'left out' : value,
  );
  const text = TEXTS.get(key) ?? made(demo, said);
  TEXTS.set(key, text);
  return text;
}

function made(demo: GoldenDemo, said: Said): string {
  const document = parseDocument(demoText(demo));
  for (const [path, value] of Object.entries({ ...cheapKeys(demo), ...said })) {
    const keys = path.split('.');
    if (value === undefined) document.deleteIn(keys);
    else document.setIn(keys, document.createNode(value));
  }
  return String(document);
}
