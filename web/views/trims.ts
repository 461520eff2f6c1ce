/** From lambda per cylinder to fuel per cylinder. */
import { mixturePlot, TRIM_CAUTIONS, trimsSentences, trimsTables } from '../../sim/index.ts';
import { lambdas } from '../state/readings.ts';
import { readingsView } from './readings.tsx';

export const trimsView = readingsView({
  id: 'trims',
  question: 'Which cylinder runs lean, and what fuel does each want?',
  readings: lambdas,
  reading:
    'Open lambda cylinder by cylinder: a head line such as speed_rpm,plate_deg,cylinder,lambda, or CO_percent, CO2_percent, O2_percent in its place, one row a cylinder and load. It is read in this browser and goes nowhere.',
  plot: mixturePlot,
  table: trimsTables.readingsTable,
  sentences: trimsSentences,
  cautions: TRIM_CAUTIONS,
});
