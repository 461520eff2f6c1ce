/**
 * Sound as samples: one speed held, or a run up through speeds at a steady rate. One cycle of each speed is
 * laid out finely and read round and round; between two speeds their cycles are blended by how near each is.
 */
import { cos, sin } from '../elementary/angles.ts';
import { type Orders, phaseOf } from './orders.ts';

/** Pressure over time. */
export interface Sound {
  /** Samples a second [Hz]. */
  rate: number;
  /** [Pa] */
  pressure: Float64Array;
}

/** The sampling rate of the compact disc (IEC 60908) [Hz]. */
const SAMPLE_RATE = 44100;

/** Places of a cycle; straight between them the 200th harmonic comes 0.3 % weak. */
const PLACES = 8192;
/** Time over which a sound swells and dies, so that it does not click [s]. */
const SWELL = 0.02;

const COS = Array.from({ length: PLACES }, (_, i) => cos(phaseOf(i / PLACES)));
const SIN = Array.from({ length: PLACES }, (_, i) => sin(phaseOf(i / PLACES)));

/** Pressure at even places of one cycle [Pa]. */
function cycleOf({ re, im }: Orders): Float64Array {
  const cycle = new Float64Array(PLACES);
  for (const [entry, part] of re.entries()) {
    for (let i = 0; i < PLACES; i++) {
      const at = ((entry + 1) * i) % PLACES;
      cycle[i]! += part * COS[at]! - im[entry]! * SIN[at]!;
    }
  }
  return cycle;
}

/** A cycle at a share of it [0..1). */
function read(cycle: Float64Array, share: number): number {
  const at = share * PLACES;
  const i = Math.floor(at);
  const next = cycle[(i + 1) % PLACES]!;
  return cycle[i % PLACES]! + (at - i) * (next - cycle[i % PLACES]!);
}

/** One speed for so long [s]. */
export function steadySound(orders: Orders, seconds: number): Sound {
  const cycle = cycleOf(orders);
  return sampled(seconds, (time) => {
    const turns = time * orders.fundamental;
    return read(cycle, turns - Math.floor(turns));
  });
}

/** From the first to the last speed at a steady rate; `speeds` rise, at least two. */
export function runUpSound(speeds: readonly Orders[], seconds: number): Sound {
  const cycles = speeds.map(cycleOf);
  const at = speeds.map(({ fundamental }) => fundamental);
  const [from, to] = [at[0]!, at.at(-1)!];
  let low = 0;
  return sampled(seconds, (time) => {
    const share = time / seconds;
    const now = from + (to - from) * share;
    const turns = time * (from + ((to - from) * share) / 2);
    while (low < at.length - 2 && now > at[low + 1]!) low++;
    const blend = (now - at[low]!) / (at[low + 1]! - at[low]!);
    const place = turns - Math.floor(turns);
    return (1 - blend) * read(cycles[low]!, place) + blend * read(cycles[low + 1]!, place);
  });
}

function sampled(seconds: number, at: (time: number) => number): Sound {
  const pressure = new Float64Array(Math.round(seconds * SAMPLE_RATE));
  for (let i = 0; i < pressure.length; i++) {
    const time = i / SAMPLE_RATE;
    const end = Math.min(time, seconds - time) / SWELL;
    pressure[i] = Math.min(end, 1) * at(time);
  }
  return { rate: SAMPLE_RATE, pressure };
}

/** Share of the scale that the greatest pressure takes: room for what a player makes between samples. */
const FILLED = 0.9;

/** The pressure that fills the scale of all these sounds alike [Pa]; 0 where there are none. */
export function fullScaleOf(sounds: readonly Sound[]): number {
  return sounds.reduce((most, sound) => Math.max(most, peakOf(sound)), 0) / FILLED;
}

/** Greatest pressure of a sound, either way [Pa]. */
function peakOf({ pressure }: Sound): number {
  return pressure.reduce((most, p) => Math.max(most, Math.abs(p)), 0);
}
