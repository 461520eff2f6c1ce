/** Filling over plate angle and speed, worked out when asked. */
import { type LoadStudy, loadQuestion, loadStudy } from '../../sim/index.ts';
import { askedStudy } from './asked.ts';

/** Angles and speeds at most: what a reader waits for and a screen holds. */
export const LOAD_SIZE = 12;

export const loadTable = askedStudy<LoadStudy>(({ scenario }, runner, seen) =>
  loadStudy(loadQuestion(scenario, LOAD_SIZE), runner, seen),
);
