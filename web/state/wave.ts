/** The moment of the cycle at which the wave is looked at, and whether it is playing. */
import { signal } from '@preact/signals';
import type { Role } from '../look.ts';

/** Whose pipe is shown. */
export const waveRole = signal<Role>('best');

/** Crank angle of the moment [deg]. */
export const moment = signal(540);

export const playing = signal(false);

export const CYCLE = 720;

/** Moves the moment on by so many degrees, round the cycle. */
export function step(degrees: number): void {
  moment.value = (moment.value + degrees + CYCLE) % CYCLE;
}

const still = matchMedia('(prefers-reduced-motion: reduce)');

/** A full cycle takes 12 s; where motion is unwelcome it goes in few, slow steps instead. */
const FLOW = { degrees: 3, every: 50 };
const STILL = { degrees: 15, every: 700 };

let timer: ReturnType<typeof setInterval> | undefined;

export function play(on: boolean): void {
  clearInterval(timer);
  playing.value = on;
  const { degrees, every } = still.matches ? STILL : FLOW;
  if (on) timer = setInterval(() => step(degrees), every);
}
