/** From readings of the bodies to screws. */
import { airPlot, BALANCE_CAUTIONS, balanceTables, screwsSentences } from '../../sim/index.ts';
import { bodies } from '../state/readings.ts';
import { readingsView } from './readings.tsx';

export const balanceView = readingsView({
  id: 'balance',
  question: 'Which screws make my cylinders breathe alike?',
  readings: bodies,
  reading:
    'Open flow or vacuum body by body: a head line such as speed_rpm,plate_deg,bleeds,cylinder,vacuum_kPa, one row a body and load, bleeds 0 where the bleeds were screwed shut. It is read in this browser and goes nowhere.',
  plot: airPlot,
  table: balanceTables.turnsTable,
  sentences: screwsSentences,
  cautions: BALANCE_CAUTIONS,
});
