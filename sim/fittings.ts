/** What is fitted beside or in place of parts of the engine, as data in SI: pressure bar, idle air, plenum, box, flow meter. */

import type { ChamberSpecification, ThrottleSpecification } from './specification.ts';

/** How mouths stand in a chamber, and whether each bank has its own; volumes are of all together. */
type Standing = Pick<ChamberSpecification, 'row' | 'banks' | 'cross'>;

export const standingOf = ({ row, banks, cross }: Standing): Standing => ({
  ...(row && { row }),
  ...(banks && { banks }),
  ...(cross && { cross }),
});

/** The chamber that the first of the firing order breathes from: its volume [m^3] and cylinders, of so many in all. */
export function leadChamber({ volume, banks }: Standing & { volume: number }, count: number) {
  if (!banks) return { volume, cylinders: count };
  return { volume: volume / 2, cylinders: banks.filter((bank) => bank === banks[0]).length };
}

/** Hoses that join the runners to a small volume with a pressure sensor, and what is asked of them. */
export interface PressureBarSpecification {
  /** How many runners have a hose [-]. */
  hoses: number;
  /** Length and bore of each hose [m]. */
  hoseLength: number;
  hoseBore: number;
  /** Bore of the hole at the runner's end of each hose [m], and its discharge coefficient [-]. */
  jetBore: number;
  jetCoefficient: number;
  /** Volume of the bar [m^3]. */
  volume: number;
  /** Hose from bar to sensor [m]; length 0 where the sensor sits on the bar. */
  sensorHoseLength: number;
  sensorHoseBore: number;
  /** Volume inside the sensor [m^3]. */
  sensorVolume: number;
  /** Engine speeds [rpm] and plate angles [deg] at which the signal is looked at, rising. */
  speeds: number[];
  angles: number[];
  /** Longest lag of the sensor behind a step, 10 to 90 % [s]. */
  mostLag: number;
  /** Difference of pressure that sensor and reading still tell [Pa]. */
  resolution: number;
  /** Crank window that is read once a cycle, of each cylinder [deg]. */
  window: { from: number; to: number };
  /** Time constant of a filter in time [s]. */
  filter: number;
  /** How far the plates of two bodies may differ [deg]. */
  plateError: number;
}

/** How an engine idles, and what its air can come through. */
export interface IdleSpecification {
  /** Speed [rpm], and air of the warm engine [kg/s]. */
  speed: number;
  air: number;
  /** Air of the cold engine beyond that, over it [-]. */
  coldExtra: number;
  /** Load that comes on [N m], and share of the heat of more fuel that becomes work [-]. */
  load: number;
  efficiency: number;
  /** Share of the warm air by plates where a valve gives the rest [-]. */
  plateShare: number;
  /** By how much plates [deg] and bores [m] differ. */
  plateError: number;
  boreError: number;
  /** The valve: bore [m], times driven a second [Hz], dead time [s]. */
  valveBore: number;
  frequency: number;
  deadTime: number;
  /** A bar of its own: volume [m^3], hoses and nipples [m]. */
  barVolume: number;
  hoseLength: number;
  hoseBore: number;
  nippleBore: number;
  /** Spark after the best at idle [deg]. */
  retard: number;
}

/** One throttle and a plenum in place of individual bodies. */
export interface PlenumSpecification extends Standing {
  /** Whether the file has it; otherwise it is as is usual. */
  given: boolean;
  /** Volume [m^3]. */
  volume: number;
  /** The one throttle body. */
  throttle: ThrottleSpecification;
  /** From the rim in the plenum to the face of the head, and bore [m]. */
  runnerLength: number;
  runnerDiameter: number;
  /** Lip of each runner in the plenum [m]. */
  mouthRadius: number;
  /** Walls of the runners [K]. */
  runnerTemperature: number;
  /** Pipe from the air to the throttle [m], and loss of its mouth and filter [dynamic heads]. */
  inletLength: number;
  inletDiameter: number;
  inletLoss: number;
}

/** A box over the trumpets. */
export interface AirboxSpecification extends Standing {
  /** Whether the file has it; otherwise it is as is usual. */
  given: boolean;
  /** Volume [m^3]. */
  volume: number;
  /** The pipe that it draws through [m], and loss of its mouth and filter [dynamic heads]. */
  snorkelLength: number;
  snorkelDiameter: number;
  filterLoss: number;
}

/** A flow meter in the snorkel of the box, and what pressure and plate angle are weighed by. */
export interface MeterSpecification {
  /** Whether the file has it; otherwise it is as is usual. */
  given: boolean;
  /** By heat, by the mean of a difference of pressure, or straight by the flow. */
  kind: 'hot' | 'difference' | 'straight';
  /** From the open end of the snorkel [m]. */
  position: number;
  /** Power of the flow that a hot element's signal follows [-], and time constant of the signal [s]. */
  exponent: number;
  lag: number;
  /** Most flow that it reads [kg/s], and over the least [-]. */
  most: number;
  turnDown: number;
  /** Error of the air at which a sensor still counts as right [-]. */
  allowed: number;
  /** By how much meter [-], pressure sensor [Pa] and plate [deg] may be off in themselves, and time constant of the pressure signal [s]. */
  flowError: number;
  pressureError: number;
  pressureLag: number;
  plateError: number;
  /** Height of a pass above the place of the file [m]. */
  climb: number;
  /** What a table of plate angles is corrected for. */
  correction: 'day' | 'none';
  /** Speeds [rpm] and plate angles [deg] that are looked at, rising. */
  speeds: number[];
  angles: number[];
}
