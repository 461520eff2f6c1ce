/** Filling over plate angle and speed, worked out when asked. */
import { fillingMap, type LoadStudy, loadQuestion } from '../../sim/index.ts';
import { askedStudy } from './asked.ts';

/** Angles and speeds at most: what a reader waits for and a screen holds. */
export const LOAD_SIZE = 12;

export const loadTable = askedStudy<LoadStudy>(({ scenario }, runner, seen) =>
  fillingMap(loadQuestion(scenario, LOAD_SIZE), runner, seen),
);
