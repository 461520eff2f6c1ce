/**
 * Crank speeds [rev/s] at which an intake pipe is tuned, without the flow solver.
 *
 * `linearTunedPeaks` is the estimate to trust: the linear induction cycle of `linearInduction`
 * swept over speed. The closed forms beside it are cross-checks, each for one idea:
 *
 *   Engelman        n = f / K,  f = c / (2 pi) sqrt(S / (L Vm)),  Vm = Vd/2 (R + 1)/(R - 1)
 *                   pipe and half-displaced cylinder as a Helmholtz resonator; K = 2.1 (2.0 to 2.5);
 *                   gives the middle of the broad hump made by inertia of the air column
 *   orders          n = 2 f1 / q,  f1 quarter-wave frequency of the shut pipe, q = 2.5, 3.5, 4.5 ...
 *                   waves left over from the last induction help; near q = 2, 3, 4 ... they hinder;
 *                   gives the fine structure on that hump
 *   one oscillation n = f theta / 360,  theta the open angle [deg]: the wave set up by the piston
 *                   comes full circle before the valve shuts; an upper bound on the tuned speed
 *
 * Sources: Engelman, ASME 73-WA/DGP-2 (1973) and the orders from memory; Harrison & Stanev,
 * J. Sound Vib. 269 (2004) 361 for one oscillation within the open period. Four-stroke engines,
 * one pipe a cylinder, mouth in still air.
 */
import {
  type BreathingCylinder,
  type InductionGas,
  type IntakePipe,
  inductionCycle,
} from './linearInduction.ts';
import { helmholtzFrequency } from './resonance.ts';

/** A speed of highest volumetric efficiency among its neighbours. */
export interface TunedPeak {
  /** Crank speed [rev/s]. */
  speed: number;
  /** Volumetric efficiency [-]. */
  volumetricEfficiency: number;
}

/** Engelman's tuned speed [rev/s]; pipe length with end correction [m], mean area [m^2]. */
export function engelmanTunedSpeed(
  pipe: { area: number; length: number },
  cylinder: { displacement: number; compressionRatio: number },
  soundSpeed: number,
  K = 2.1,
): number {
  const { displacement, compressionRatio: R } = cylinder;
  const middleVolume = ((displacement / 2) * (R + 1)) / (R - 1);
  return helmholtzFrequency(pipe.area, pipe.length, middleVolume, soundSpeed) / K;
}

/** Speed [rev/s] at which `order` periods of frequency f [Hz] fill one four-stroke cycle. */
export function orderTunedSpeed(frequency: number, order: number): number {
  return (2 * frequency) / order;
}

/** Speed [rev/s] at which one period of frequency f [Hz] fills the open angle [deg]. */
export function oneOscillationSpeed(frequency: number, openAngle: number): number {
  return (frequency * openAngle) / 360;
}

/**
 * Tuned peaks of the linear induction cycle between two speeds, the highest first.
 *
 * @param speeds crank speeds [rev/s], evenly spaced and rising; about 100 rpm apart resolve a peak
 */
export function linearTunedPeaks(
  pipe: IntakePipe,
  cylinder: BreathingCylinder,
  gas: InductionGas,
  speeds: readonly number[],
): TunedPeak[] {
  const efficiencies = speeds.map(
    (speed) => inductionCycle(pipe, cylinder, gas, speed).volumetricEfficiency,
  );
  return tunedPeaks(speeds, efficiencies);
}

/** Local maxima of a curve at evenly spaced speeds, each from a parabola; the highest first. */
export function tunedPeaks(
  speeds: readonly number[],
  efficiencies: readonly number[],
): TunedPeak[] {
  const peaks: TunedPeak[] = [];
  for (let i = 1; i < speeds.length - 1; i++) {
    const [before, here, after] = [efficiencies[i - 1]!, efficiencies[i]!, efficiencies[i + 1]!];
    if (here <= before || here < after) continue;
    const offset = (before - after) / (2 * (before - 2 * here + after));
    peaks.push({
      speed: speeds[i]! + offset * (speeds[i]! - speeds[i - 1]!),
      volumetricEfficiency: here - ((before - after) * offset) / 4,
    });
  }
  return peaks.sort((a, b) => b.volumetricEfficiency - a.volumetricEfficiency);
}
