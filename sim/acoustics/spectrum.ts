/**
 * Amplitude spectrum of a probe sampled at even intervals.
 *
 *   X(f) = 2 / sum(w) | sum_j w_j (x_j - mean) exp(-2 pi i f j dt) |,  w the Hann window
 *
 * x, X in the unit of the probe; f [Hz]; dt [s]. A pure tone of amplitude a shows as a peak of
 * height a. Source: Harris, Proc. IEEE 66 (1978) 51, for the window. Tones closer than 4/(N dt) run
 * together.
 */
import FFT from 'fft.js';

/** One-sided amplitude spectrum, from 0 to half the sampling rate. */
export interface Spectrum {
  /** Distance of the lines [Hz]; line i stands at i times that. */
  spacing: number;
  /** Amplitude of each line, in the unit of the samples. */
  amplitude: Float64Array;
}

export interface SpectralPeak {
  /** [Hz] */
  frequency: number;
  /** In the unit of the samples. */
  amplitude: number;
}

/** Spectrum of samples taken every `interval` [s]; padded with zeros to refine the lines. */
export function amplitudeSpectrum(samples: ArrayLike<number>, interval: number): Spectrum {
  const count = samples.length;
  const size = 2 ** Math.ceil(Math.log2(4 * count));
  const mean = Array.from(samples).reduce((sum, x) => sum + x, 0) / count;
  const windowed = new Array<number>(size).fill(0);
  let windowSum = 0;
  for (let j = 0; j < count; j++) {
    const w = Math.sin((Math.PI * (j + 0.5)) / count) ** 2;
    windowSum += w;
    windowed[j] = w * (samples[j]! - mean);
  }
  const fft = new FFT(size);
  const out = fft.createComplexArray();
  fft.realTransform(out, windowed);
  const amplitude = Float64Array.from(
    { length: size / 2 },
    (_, i) => (2 / windowSum) * Math.hypot(out[2 * i], out[2 * i + 1]),
  );
  return { spacing: 1 / (size * interval), amplitude };
}

/** Peaks above `floor` times the highest line, each from a parabola through three logarithms. */
export function spectralPeaks({ spacing, amplitude }: Spectrum, floor = 0.05): SpectralPeak[] {
  const threshold = floor * Math.max(...amplitude);
  const peaks: SpectralPeak[] = [];
  for (let i = 1; i < amplitude.length - 1; i++) {
    const [before, here, after] = [amplitude[i - 1]!, amplitude[i]!, amplitude[i + 1]!];
    if (here < threshold || here <= before || here < after) continue;
    const [a, b, c] = [Math.log(before), Math.log(here), Math.log(after)];
    const offset = (a - c) / (2 * (a - 2 * b + c));
    peaks.push({
      frequency: (i + offset) * spacing,
      amplitude: Math.exp(b - ((a - c) * offset) / 4),
    });
  }
  return peaks;
}
