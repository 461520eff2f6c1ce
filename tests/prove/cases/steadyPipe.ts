/** Steady flow through a straight pipe from one reservoir to another: friction, or heat, alone. */
import { openEnd } from '../../../sim/boundary/node.ts';
import { OpenAir } from '../../../sim/boundary/reservoir.ts';
import type { Duct, DuctOptions } from '../../../sim/duct/duct.ts';
import { perfectAir } from '../../gases.ts';
import { oneDuct, pipe, runFor } from '../../network.ts';

const gas = perfectAir();
export const P0 = 2e5;
export const T0 = 320;
export const LENGTH = 1;
export const DIAMETER = 0.04;

export interface SteadyPipe {
  cells: number;
  /** Pressure behind the pipe [Pa]. */
  back: number;
  time: number;
  options?: Partial<DuctOptions>;
  /** Fanning factor [-] of a wall so rough that the Reynolds number hardly counts. */
  fanning?: number;
  /** Heat put into each kilogram that passes [J/kg], spread over the middle of the pipe. */
  heat?: number;
}

/** A pipe from a reservoir at P0, T0 to one at `back`, run to the steady state. */
export function steadyPipe({
  cells,
  back,
  time,
  options = {},
  fanning = 0,
  heat = 0,
}: SteadyPipe): Duct {
  const rough = fanning > 0 ? { roughness: roughnessOf(fanning) } : {};
  const duct = pipe(LENGTH, DIAMETER, cells, { ...rough, ...options });
  duct.fill(gas, { pressure: back, temperature: T0 });
  const before = new OpenAir(gas, { pressure: P0, temperature: T0 });
  const behind = new OpenAir(gas, { pressure: back, temperature: T0 });
  const net = oneDuct(
    duct,
    { gas },
    { low: (end) => openEnd(end, before), high: (end) => openEnd(end, behind) },
  );
  let last = 0;
  runFor(net, time, (now) => {
    if (heat > 0) addHeat(duct, heat, now - last);
    last = now;
  });
  return duct;
}

/** Roughness [m] at which the law of a rough wall (Haaland 1983) has this Fanning factor. */
const roughnessOf = (fanning: number) =>
  3.7 * DIAMETER * 10 ** (-1 / (1.11 * 3.6 * Math.sqrt(fanning)));

/** Heat after each step, in the middle half of the pipe. */
function addHeat(duct: Duct, heat: number, dt: number): void {
  const { cells, mesh } = duct;
  const [from, to] = [mesh.cells / 4, (3 * mesh.cells) / 4];
  const perLength = (heat * 2) / LENGTH;
  for (let i = from; i < to; i++) cells.energy.add(i, perLength * cells.momentum.at(i) * dt);
  duct.refresh(gas);
}

/** Mach number of an end state. */
export const endMach = ([rho, u, p]: number[]) => u! / Math.sqrt((1.4 * p!) / rho!);

/** Total temperature of an end state [K]. */
export const endTotal = ([rho, u, p]: number[]) =>
  p! / (rho! * gas.rAir) + u! ** 2 / (7 * gas.rAir);
