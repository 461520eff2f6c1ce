/** What is heard of the length fitted now and of the one recommended, worked out when asked; and playing it. */
import { effect, signal } from '@preact/signals';
import {
  type Computer,
  type ListenStudy,
  mouthsInTheOpen,
  type PointJob,
  type Sound,
  soundOf,
  type Trace,
} from '../../sim/index.ts';
import { Cancelled, URGENCY } from '../compute/pool.ts';
import { askedStudy } from './asked.ts';
import { pool } from './pool.ts';

export const listening = askedStudy<ListenStudy>(({ scenario, study }, runner, seen, stop) => {
  const { engine, speeds, target, mouths, airbox, lengthUnit } = scenario;
  const own = engine.intake.trumpet.length;
  const best = study.full?.recommended.length ?? own;
  const middle = (target.from + target.to) / 2;
  const speed = speeds.reduce((a, b) => (Math.abs(b - middle) < Math.abs(a - middle) ? b : a));
  const lengths = best === own ? [own] : [own, best];
  const task = ((_: string, job: PointJob) => traced(job, stop)) as Computer['task'];
  const box = mouthsInTheOpen(engine) ? {} : { box: airbox };
  const question = { engine, lengths, speeds, speed, row: mouths, ...box, lengthUnit };
  return soundOf(question, { ...runner, task }, seen);
});

/** Traces by the name of their job, without the picture of waves, so that going on computes the rest only. */
const known = new Map<string, Trace>();

/** Most traces kept, some 100 kilobytes each. */
const KEPT = 200;

async function traced(job: PointJob, stop: AbortSignal) {
  const key = JSON.stringify(job);
  const before = known.get(key);
  if (before) return before;
  try {
    const trace = await pool.trace(job, stop, URGENCY.asked);
    if (known.size >= KEPT) known.clear();
    known.set(key, { ...trace, wave: { distance: [], pressure: [], velocity: [] } });
    return trace;
  } catch (error) {
    if (error instanceof Cancelled) throw error;
    return { speed: job.speed, failure: error instanceof Error ? error.message : String(error) };
  }
}

/** Name of the sound that is playing; '' for none. */
export const playing = signal('');

let context: AudioContext | undefined;
let source: AudioBufferSourceNode | undefined;

/** Plays a sound in place of the one that plays, or stops it where it is the same. */
export function toggle(name: string, sound: Sound, fullScale: number): void {
  const stopped = playing.value === name;
  source?.stop();
  playing.value = '';
  if (stopped) return;
  context ??= new AudioContext();
  const buffer = context.createBuffer(1, sound.pressure.length, sound.rate);
  buffer.copyToChannel(
    Float32Array.from(sound.pressure, (p) => p / fullScale),
    0,
  );
  const now = context.createBufferSource();
  now.buffer = buffer;
  now.connect(context.destination);
  now.onended = () => {
    if (source === now) playing.value = '';
  };
  source = now;
  playing.value = name;
  now.start();
}

// What has been taken away is heard no longer.
effect(() => {
  if (listening.state.value.stage !== 'done') source?.stop();
});
