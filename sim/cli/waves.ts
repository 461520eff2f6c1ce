/** Sounds as WAV files (RIFF, linear PCM of 16 bits, one channel). */
import wavefile from 'wavefile';
import type { Findings } from '../index.ts';

/** Greatest sample of 16 bits. */
const GREATEST = 32767;

/** Name and content of every file. */
export function wavesOf({
  sounds,
  fullScale,
}: NonNullable<Findings['audio']>): [name: string, wave: Uint8Array][] {
  return Object.entries(sounds).map(([name, { rate, pressure }]) => {
    const samples = Int16Array.from(pressure, (p) => Math.round((GREATEST * p) / fullScale));
    const wave = new wavefile.WaveFile();
    wave.fromScratch(1, rate, '16', samples);
    return [name, wave.toBuffer()];
  });
}
