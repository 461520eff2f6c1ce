/** Weighting of sound levels, and the level of a mouth that breathes. */
import { level, weightA } from '../../sim/sound/level.ts';
import { heard } from '../../sim/sound/monopoles.ts';
import { cycleFrequency, ordersOf } from '../../sim/sound/orders.ts';
import { absolute, type Check, type Group } from './check.ts';

/** Weighting A [dB] by nominal frequency [Hz], a third of an octave apart from 10 Hz on. */
const TABLE = [
  [10, -70.4],
  [12.5, -63.4],
  [16, -56.7],
  [20, -50.5],
  [25, -44.7],
  [31.5, -39.4],
  [40, -34.6],
  [50, -30.2],
  [63, -26.2],
  [80, -22.5],
  [100, -19.1],
  [125, -16.1],
  [160, -13.4],
  [200, -10.9],
  [250, -8.6],
  [315, -6.6],
  [400, -4.8],
  [500, -3.2],
  [630, -1.9],
  [800, -0.8],
  [1000, 0],
  [1250, 0.6],
  [1600, 1],
  [2000, 1.2],
  [2500, 1.3],
  [3150, 1.2],
  [4000, 1],
  [5000, 0.5],
  [6300, -0.1],
  [8000, -1.1],
  [10000, -2.5],
  [12500, -4.3],
  [16000, -6.6],
  [20000, -9.3],
] as const;

const weights: Check[] = TABLE.map(([nominal, published], i) => ({
  what: `weighting A at ${nominal} Hz [dB]`,
  source: 'weightingA',
  published,
  tolerance: absolute(0.05),
  run: () => 20 * Math.log10(weightA(1000 * 10 ** ((i - 20) / 10))),
}));

/** Harmonic of the cycle, amplitude of flow [kg/s], speed [rpm], distance on hard ground [m]. */
const MOUTHS = [
  [4, 0.02, 6000, 0.5],
  [12, 0.005, 6000, 7.5],
  [4, 0.05, 3000, 7.5],
] as const;

const mouths: Check[] = MOUTHS.map(([harmonic, amplitude, speed, distance]) => {
  const frequency = harmonic * cycleFrequency(speed);
  return {
    what: `one mouth on hard ground, ${amplitude} kg/s at ${frequency} Hz, ${distance} m away: level [dB]`,
    source: 'monopole',
    published: 20 * Math.log10((frequency * amplitude) / distance / Math.SQRT2 / 20e-6),
    tolerance: absolute(0.1),
    run: () => {
      const angle = Array.from({ length: 720 }, (_, i) => i);
      const flow = angle.map((at) => amplitude * Math.sin((2 * Math.PI * harmonic * at) / 720));
      const orders = ordersOf(angle, flow, cycleFrequency(speed), 100);
      const row = { mouths: [{ place: 0, lag: 0 }], height: 0 };
      return level(heard(orders, row, { distance, height: 0 }, 343));
    },
  };
});

export const sound: Group = { name: 'Sound', checks: [...weights, ...mouths] };
