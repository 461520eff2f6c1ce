/** Factor of Woschni's law for p in Pa in place of kPa (step/cylinder.ts, where the source is named): 3.26 / 1000^0.8. */
import { power } from '../elementary/powers.ts';

export const WOSCHNI = 3.26 * power(1000, -0.8);
