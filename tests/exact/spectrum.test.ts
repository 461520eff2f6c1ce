import { describe, expect, it } from 'vitest';
import { amplitudeSpectrum, spectralPeaks } from '../../sim/acoustics/spectrum.ts';

const interval = 1e-4;
const tone = (amplitude: number, frequency: number, count: number, decay = 0) =>
  Array.from({ length: count }, (_, j) => {
    const t = j * interval;
    return amplitude * Math.exp(-decay * t) * Math.sin(2 * Math.PI * frequency * t + 0.4);
  });

describe('spectrum of known tones', () => {
  it.each([50, 61.3, 237.77, 1000.1])('finds %f Hz and its amplitude', (frequency) => {
    const samples = tone(3, frequency, 2000).map((x) => x + 100);
    const [peak, ...others] = spectralPeaks(amplitudeSpectrum(samples, interval));
    expect(others).toEqual([]);
    expect(Math.abs(peak!.frequency - frequency)).toBeLessThan(0.02);
    expect(Math.abs(peak!.amplitude / 3 - 1)).toBeLessThan(0.002);
  });

  it('separates two tones of unlike strength', () => {
    const second = tone(0.5, 410, 2000);
    const samples = tone(2, 130, 2000).map((x, j) => x + second[j]!);
    const peaks = spectralPeaks(amplitudeSpectrum(samples, interval));
    expect(peaks.map(({ frequency }) => Math.round(frequency))).toEqual([130, 410]);
    expect(peaks[1]!.amplitude).toBeCloseTo(0.5, 2);
  });

  it('finds the frequency of a ringing that dies away', () => {
    const samples = tone(1, 235.8, 3000, 8);
    const [peak] = spectralPeaks(amplitudeSpectrum(samples, interval));
    expect(Math.abs(peak!.frequency / 235.8 - 1)).toBeLessThan(1e-3);
  });
});
