/** Ground and ink of a cell tinted by value. */
import { power } from '../elementary/powers.ts';

/** Dark blue to light yellow: even in lightness, safe for the colour-blind, readable in grey. */
const LOW = [24, 46, 92] as const;
const MIDDLE = [112, 120, 122] as const;
const HIGH = [252, 228, 110] as const;

/** Ground and ink of a cell whose value lies at a share of the way from the least to the greatest. */
export function tones(share: number): { ground: string; ink: string } {
  const [from, to, at] = share < 0.5 ? [LOW, MIDDLE, 2 * share] : [MIDDLE, HIGH, 2 * share - 1];
  const mixed = from.map((tone, i) => Math.round(tone + at * (to[i]! - tone)));
  return { ground: `rgb(${mixed.join(' ')})`, ink: inkOn(mixed) };
}

/** The same as the style of a table's cell. */
export function tint(share: number): string {
  const { ground, ink } = tones(share);
  return `background:${ground};color:${ink}`;
}

/** Black or white, whichever stands out more: above 4.5 to 1 on any ground (WCAG 2.2, 1.4.3). */
function inkOn(tones: readonly number[]): string {
  const [red, green, blue] = tones.map((tone) => {
    const share = tone / 255;
    return share <= 0.04045 ? share / 12.92 : power((share + 0.055) / 1.055, 2.4);
  });
  const luminance = 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  return 1.05 / (luminance + 0.05) > (luminance + 0.05) / 0.05 ? '#fff' : '#000';
}
