/** The figure that counts, as plots and tables show it. */
import type { Target } from '../../sim/index.ts';

export interface Scored {
  name: string;
  unit: string;
  /** What a value inside the program is multiplied by. */
  times: number;
}

export function scored({ score }: Target): Scored {
  return score === 'indicated-torque'
    ? { name: 'indicated torque', unit: 'N m', times: 1 }
    : { name: 'volumetric efficiency', unit: '%', times: 100 };
}
