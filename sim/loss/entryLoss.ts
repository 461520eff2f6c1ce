/**
 * Loss of total pressure where still air enters a pipe.
 *
 *   p0 - p0' = K rho u^2 / 2        K  entry loss, dynamic heads of the pipe [-]
 *   Cd = 1 / sqrt(1 + K)            Cd discharge coefficient of the entry [-], incompressible
 *
 * Sources: Idelchik, Handbook of Hydraulic Resistance, diagram 3-3 (rounded, flush) as also printed
 * by Roberson & Crowe, Engineering Fluid Mechanics, 2nd ed., and diagram 3-1 (projecting, square
 * cut); Crane TP-410, p. A-29; Miller, Internal Flow Systems, 1990; Rennels & Hudson, Pipe Flow,
 * 2012; Swamee & Sharma, Design of Water Supply Pipe Networks, 2008.
 * Valid for turbulent flow at Mach numbers well below 1. The handbooks differ by a factor of two to
 * four between r/D of 0.05 and 0.2; `ENTRY_LOSS_ROUNDED_HANDBOOKS` carries that spread.
 */
import { interpolateLinear } from '../interpolation.ts';

/** One handbook's column: loss [dynamic heads] against edge radius over pipe diameter [-]. */
export interface EntryLossTable {
  source: string;
  radiusOverDiameter: readonly number[];
  loss: readonly number[];
}

/** Rounded entry flush with a wall, one table a handbook. The first is the one used. */
const ENTRY_LOSS_ROUNDED_HANDBOOKS: readonly EntryLossTable[] = [
  {
    source: 'Idelchik, diagram 3-3; Roberson & Crowe',
    radiusOverDiameter: [0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.12, 0.16, 0.2],
    loss: [0.5, 0.44, 0.37, 0.31, 0.26, 0.22, 0.2, 0.15, 0.09, 0.06, 0.03],
  },
  {
    source: 'Crane TP-410, p. A-29',
    radiusOverDiameter: [0, 0.02, 0.04, 0.06, 0.1, 0.15],
    loss: [0.5, 0.28, 0.24, 0.15, 0.09, 0.04],
  },
  {
    source: 'Miller 1990',
    radiusOverDiameter: [0, 0.02, 0.05, 0.1, 0.15, 0.2],
    loss: [0.51, 0.357, 0.209, 0.082, 0.062, 0.059],
  },
  {
    source: 'Rennels & Hudson 2012',
    radiusOverDiameter: [0, 0.02, 0.05, 0.1, 0.15, 0.2],
    loss: [0.57, 0.397, 0.297, 0.203, 0.149, 0.115],
  },
  {
    source: 'Swamee & Sharma 2008',
    radiusOverDiameter: [0, 0.02, 0.05, 0.1, 0.15, 0.2],
    loss: [0.5, 0.376, 0.251, 0.153, 0.107, 0.08],
  },
];

/** Square-cut end projecting at least half a diameter, against wall thickness: Idelchik 3-1. */
const ENTRY_LOSS_PROJECTING_TABLE = {
  wallOverDiameter: [0, 0.004, 0.008, 0.012, 0.016, 0.02, 0.024, 0.03, 0.04, 0.05],
  loss: [1, 0.94, 0.88, 0.83, 0.77, 0.72, 0.68, 0.61, 0.54, 0.5],
} as const;

function lossOf(table: EntryLossTable, radiusOverDiameter: number): number {
  return interpolateLinear(table.radiusOverDiameter, table.loss, radiusOverDiameter);
}

/**
 * Entry loss of a rounded mouth flush with a wall [dynamic heads of the pipe].
 *
 * @param radiusOverDiameter edge radius over pipe diameter [-]; beyond 0.2 the last value holds
 */
export function entryLossRounded(radiusOverDiameter: number): number {
  return lossOf(ENTRY_LOSS_ROUNDED_HANDBOOKS[0]!, radiusOverDiameter);
}

/** Least and greatest entry loss that any of the handbooks gives for a rounded mouth. */
export function entryLossRoundedSpread(radiusOverDiameter: number): { low: number; high: number } {
  const losses = ENTRY_LOSS_ROUNDED_HANDBOOKS.map((table) => lossOf(table, radiusOverDiameter));
  return { low: Math.min(...losses), high: Math.max(...losses) };
}

/**
 * Entry loss of a square-cut pipe end that stands free in the air [dynamic heads of the pipe].
 *
 * @param wallOverDiameter wall thickness over bore [-]; 0 is Borda's ideal thin wall, K = 1
 */
export function entryLossProjecting(wallOverDiameter: number): number {
  const { wallOverDiameter: walls, loss } = ENTRY_LOSS_PROJECTING_TABLE;
  return interpolateLinear(walls, loss, wallOverDiameter);
}

/** Discharge coefficient [-] of an entry with loss K [dynamic heads], incompressible. */
export function dischargeFromLoss(K: number): number {
  return 1 / Math.sqrt(1 + K);
}
