/** What joins duct ends. The time loop knows no more of a boundary than this. */
import type { Gas } from '../gas/gas.ts';
import type { End } from './ductEnd.ts';

/** When a node is solved: the middle of the step. */
export interface Moment {
  /** Crank angle at half time [deg], 0 to 720; 0 where there is no crank. */
  crankAngle: number;
  /** How far the crank turns during the step [deg]. */
  crankStep: number;
  /** Length of the step [s]. */
  dt: number;
}

/** A node: solves all its ends together and writes flow and state to each. */
export interface Node {
  readonly ends: readonly End[];
  exchange(gas: Gas, moment: Moment): void;
}
