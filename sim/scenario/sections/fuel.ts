/** The fuel and how it burns. */
import { FUEL_NAMES } from '../../gas/fuel.ts';
import type { CombustionSpecification } from '../../specification.ts';
import { choice, maybe, optional, section } from '../key.ts';
import { takeAll, type ViewOf } from '../view.ts';

const FIRING = { top: 0, bottom: 180 };
const UNSEEN = 'nobody measures it without an indicator';

export const fuelSection = optional(
  section('The fuel and how it burns.', {
    name: choice(FUEL_NAMES, 'Fuel in the tank.', {
      value: 'petrol',
      why: 'common practice, no source',
    }),
    lambda: maybe('ratio', 'Air over stoichiometric air at full load, off the dyno sheet.', {
      limits: ['0.6', '1.6'],
      usual: ['0.8', '1.1'],
      absent: { value: '0.88', why: 'full load; common practice, no source' },
      condition: true,
      doubt: { half: '0.03', why: 'sensor' },
      form: { group: 'Day and fuel', label: 'Lambda at full load' },
    }),
    burn50: maybe('angle', 'Crank angle of 50 % burned; firing top dead centre counts.', {
      limits: ['20 deg BTDC', '60 deg ATDC'],
      usual: ['2 deg ATDC', '25 deg ATDC'],
      deadCentres: FIRING,
      absent: { value: '9 deg ATDC', why: 'best torque, Heywood (1988) ch. 9, from memory' },
      doubt: { half: '3 deg', why: UNSEEN },
    }),
    burnDuration: maybe('angle', 'Crank angle from 10 % to 90 % burned at full load.', {
      limits: ['5 deg', '120 deg'],
      usual: ['15 deg', '50 deg'],
      absent: { value: '28 deg', why: 'common practice, no source' },
      doubt: { half: '4 deg', why: UNSEEN },
    }),
    burnResponse: maybe(
      'ratio',
      'How far burn durations follow residual gas, density and piston speed: 0 as stated everywhere, 1 as published flame speeds.',
      {
        limits: ['0', '1.5'],
        usual: ['0', '1.4'],
        absent: {
          value: '1',
          why: 'Hires et al. (1978) with Rhodes & Keck (1985), from memory; as stated at 5 % residual gas, 150 kPa, 390 K, 15 m/s',
        },
        doubt: { half: '0.35', why: 'two sources of flame speed differ by as much' },
      },
    ),
    efficiency: maybe('ratio', 'Share of the heat that the air allows which is released.', {
      limits: ['0.3', '1'],
      usual: ['0.85', '1'],
      absent: { value: '0.97', why: 'common practice, no source' },
    }),
  }),
);

export function resolveFuel(fuel: ViewOf<typeof fuelSection>): CombustionSpecification {
  const { name, ...burn } = takeAll(fuel);
  return { fuel: name, ...burn };
}
