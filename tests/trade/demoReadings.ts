/** The readings beside the demo of the hill-climb four: invented errors, noise of seed 13. */
import { readDemo } from '../toy.ts';
import { madeReadings, readingsCsv } from './lambdaReadings.ts';

export const SEED = 13;
export const REPEATABILITY = 0.005;

/** Cylinder 3 has its plate open too far, cylinder 2 an injector that gives too little. */
export const ERRORS = {
  plates: [0, -0.03, 0.08, 0.01],
  injectors: [0.005, -0.035, 0, 0.01],
  probes: [0, 0.012, -0.008, 0.004],
};

const OWN = [1, 2, 3, 4];
const ROUND = [2, 3, 4, 1];

export const LOADS = [
  { speed: 1000, angle: 9, lambda: 0.98, probes: OWN },
  { speed: 2000, angle: 12, lambda: 0.99, probes: OWN },
  { speed: 3000, angle: 20, lambda: 0.97, probes: OWN },
  { speed: 4000, angle: 45, lambda: 0.9, probes: OWN },
  { speed: 3000, angle: 20, visit: 2, lambda: 0.97, probes: ROUND },
];

const REMARKS = [
  'Lambda of each primary of the hill-climb four; invented, made by tests/trade/demoReadings.ts with seed 13.',
  'Visit 2 has the probes changed round between the pipes.',
  'plate: 0.1 deg',
  'injector: 3 %',
  'probe: 1 %',
  'repeatability: 0.5 %',
];

export const demoText = () =>
  readingsCsv(
    madeReadings(readDemo('hill-climb').engine, ERRORS, LOADS, REPEATABILITY, SEED),
    REMARKS,
  );
