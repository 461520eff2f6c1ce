/**
 * Friction mean effective pressure of a warm spark-ignition engine, pumping left out [kPa]:
 *
 *   crankshaft    1.22e5 D/(B^2 S n) + 3.03e-4 N D^3 L m/(B^2 S n) + 1.35e-10 D^2 N^2 m/n
 *   pistons       294 Sp/B + 4.06e4 (1 + 500/N)/B^2 + 3.03e-4 N d^3 l n/(B^2 S n)
 *   gas pressure  6.89 (pi/pa) (0.088 r + 0.182 r^(1.33 - 0.0238 Sp))
 *   valve train   4.12 + 244 N m/(B^2 S n) + 133 (1 + 500/N) v/(S n) + 0.5 h^1.5 N^0.5 v/(B S n)
 *                 + 10.7 (1 + 500/N) h v/(S n)           two cams overhead, acting direct
 *   auxiliaries   8.32 + 1.86e-3 N + 7.45e-7 N^2         oil pump, water pump, idle alternator
 *
 *   N  speed [rpm]     Sp  mean piston speed [m/s]      r  compression ratio [-]
 *   B, S  bore, stroke [mm]    n  cylinders    v  valves of the engine    h  their greatest lift [mm]
 *   m  main bearings, D x L [mm]    d x l  rod bearings [mm]    pi/pa  intake over ambient pressure [-]
 *
 * Source: Sandoval & Heywood, An Improved Friction Model for Spark-Ignition Engines, SAE 2003-01-0725,
 * after Patton, Nitschke & Heywood, SAE 890836; coefficients from memory, oil at its usual viscosity.
 * Bearings are not asked for: D = 0.62 B, L = 0.28 B, d = 0.55 B, l = 0.26 B, one main bearing more
 * than cylinders (in line); common practice, no source. Engines scatter about such correlations by 15
 * to 20 % (from memory). Fitted to engines up to about 6000 rpm; beyond, the squares of speed rule.
 */
import { cube, power, square } from '../elementary/powers.ts';
import type { EngineSpecification, LiftSpecification } from '../specification.ts';
import { meanPistonSpeed } from './crank.ts';

/** Friction mean effective pressures [Pa]. */
export interface Friction {
  crankshaft: number;
  /** Pistons, rings, rods, gas pressure behind the rings counted. */
  pistons: number;
  valveTrain: number;
  auxiliaries: number;
  total: number;
}

/** One standard uncertainty of the total [share of it]. */
export const FRICTION_SPREAD = 0.2;

/** Bearings over bore [-]. */
const MAIN = { diameter: 0.62, length: 0.28 };
const ROD = { diameter: 0.55, length: 0.26 };

/** Journal bearings [kPa mm^3]: D^3 L times their number, over B^2 S n and speed. */
const HYDRODYNAMIC = 3.03e-4;

type Sizes = Pick<EngineSpecification, 'cylinder' | 'intake' | 'exhaust' | 'ambient'>;

/** Friction at a speed [rpm]. */
export function friction(engine: Sizes, speed: number): Friction {
  const parts = {
    crankshaft: 1e3 * crankshaft(engine, speed),
    pistons: 1e3 * (pistons(engine, speed) + gasPressure(engine, speed)),
    valveTrain: 1e3 * valveTrain(engine, speed),
    auxiliaries: 1e3 * (8.32 + 1.86e-3 * speed + 7.45e-7 * square(speed)),
  };
  const { crankshaft: a, pistons: b, valveTrain: c, auxiliaries: d } = parts;
  return { ...parts, total: a + b + c + d };
}

function millimetres({ bore, stroke, count }: Sizes['cylinder']) {
  const [B, S] = [1e3 * bore, 1e3 * stroke];
  return { B, S, n: count, swept: B * B * S * count };
}

function crankshaft({ cylinder }: Sizes, N: number): number {
  const { B, n, swept } = millimetres(cylinder);
  const [D, L, mains] = [MAIN.diameter * B, MAIN.length * B, n + 1];
  const seals = (1.22e5 * D) / swept;
  const journals = (HYDRODYNAMIC * N * cube(D) * L * mains) / swept;
  const churning = (1.35e-10 * square(D * N) * mains) / n;
  return seals + journals + churning;
}

function pistons({ cylinder }: Sizes, N: number): number {
  const { B, n, swept } = millimetres(cylinder);
  const [d, l] = [ROD.diameter * B, ROD.length * B];
  const skirts = (294 * meanPistonSpeed(cylinder, N)) / B;
  const rings = (4.06e4 * (1 + 500 / N)) / square(B);
  return skirts + rings + (HYDRODYNAMIC * N * cube(d) * l * n) / swept;
}

function gasPressure({ cylinder, intake, ambient }: Sizes, N: number): number {
  const r = cylinder.compressionRatio;
  const exponent = 1.33 - 0.0238 * meanPistonSpeed(cylinder, N);
  return (
    6.89 * (intake.feed.pressure / ambient.pressure) * (0.088 * r + 0.182 * power(r, exponent))
  );
}

function valveTrain({ cylinder, intake, exhaust }: Sizes, N: number): number {
  const { B, S, n, swept } = millimetres(cylinder);
  const slow = 1 + 500 / N;
  const valves = [intake.valve, exhaust.valve].map(({ count, lift }) => {
    const h = 1e3 * greatestLift(lift);
    const followers = (133 * slow + 10.7 * slow * h) / S;
    return count * (followers + (0.5 * h * Math.sqrt(h * N)) / (B * S));
  });
  return 4.12 + (244 * N * (n + 1)) / swept + valves[0]! + valves[1]!;
}

function greatestLift(lift: LiftSpecification): number {
  return lift.kind === 'timing' ? lift.maximum : Math.max(...lift.lift);
}
