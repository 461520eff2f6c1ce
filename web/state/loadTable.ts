/** Filling over throttle angle and speed, worked out when asked. */
import { signal } from '@preact/signals';
import { fillingMap, type LoadStudy, loadQuestion } from '../../sim/index.ts';
import { askedStudy } from './asked.ts';

/** Angles and speeds at most that a reader may ask for; a table of the greatest takes minutes. */
export const LOAD_SIZES: readonly number[] = [12, 16, 24, 32, 40];

/** Those asked for: what a reader waits for and a screen holds. */
export const loadSize = signal(LOAD_SIZES[0]!);

export const loadTable = askedStudy<LoadStudy>(({ scenario }, runner, seen) =>
  fillingMap(loadQuestion(scenario, loadSize.value), runner, seen),
);

/** Takes another size; what was worked out is kept by its points. */
export function chooseLoadSize(size: number): void {
  loadTable.clear();
  loadSize.value = size;
}
