/** What the outer injector does to the air, one effect at a time. */
import type { Data, Layout } from 'plotly.js-cartesian-dist-min';
import { fixed, rpm } from '../format.ts';
import { isPlaced, placed, placement } from '../state/placement.ts';
import { baseLayout, type Look } from './look.ts';
import type { View } from './view.ts';
import { withKey } from './withKey.ts';

export const injectorSplitView: View = {
  id: 'injector-split',
  question: 'Is its gain cooling, or does the fuel take room?',
  width: 'half',
  height: 420,
  asked: true,
  applies: isPlaced,
  reading: () =>
    'Change of filling by the outer injector against fuel that evaporates only in the cylinder. Cooling packs the air, vapour takes its room, and colder, heavier gas shifts the wave to lower speeds; the line is the sum.',
  summary: () => {
    const { speeds, split } = placed()!;
    return speeds.map((speed, i) => `${rpm(speed)}: ${words(split.total[i])}`).join(', ');
  },
  ready: () => placed() !== undefined,
  figure: (_, look) => {
    const { speeds, split } = placed()!;
    const layout = baseLayout(look, 'engine speed [rpm]', 'change of filling [% points]');
    const parts = EFFECTS.map(({ key, name, hatch, color }) => ({
      type: 'bar',
      name,
      x: speeds,
      y: split[key].map(points),
      marker: {
        color: color(look),
        pattern: { shape: hatch, fgcolor: look.paper, fillmode: 'overlay', size: 6, solidity: 0.3 },
      },
    }));
    const total = {
      type: 'scatter',
      mode: 'lines+markers',
      name: 'all together',
      x: speeds,
      y: split.total.map(points),
      line: { color: look.ink, width: 2 },
      marker: { color: look.ink, size: 7 },
    };
    return {
      data: [...parts, total] as unknown as Partial<Data>[],
      layout: withKey(
        look,
        {
          ...layout,
          barmode: 'relative',
          yaxis: {
            ...layout.yaxis,
            zeroline: true,
            zerolinecolor: look.role.now,
            hoverformat: '+.2f',
          },
        } as Partial<Layout>,
        2,
      ),
    };
  },
  table: () => {
    const { speeds, split } = placed()!;
    const parts = [...EFFECTS, { key: 'total', name: 'all together' }] as const;
    return {
      columns: [
        { name: 'speed', unit: 'rpm', decimals: 0 },
        ...parts.map(({ name }) => ({
          name: `change of filling, ${name}`,
          unit: '% points',
          decimals: 2,
        })),
      ],
      rows: speeds.map((speed, i) => [
        speed,
        ...parts.map(({ key }) => points(split[key][i]) ?? undefined),
      ]),
    };
  },
  watch: () => [placement.state.value],
};

const EFFECTS = [
  { key: 'cooling', name: 'cooling', hatch: '', color: (look: Look) => look.wave[0] },
  { key: 'displacement', name: 'room taken', hatch: '/', color: (look: Look) => look.price },
  { key: 'waveShift', name: 'wave shift', hatch: '.', color: (look: Look) => look.role.hand },
] as const;

const points = (value: number | undefined) => (value === undefined ? null : 100 * value);

const words = (value: number | undefined) =>
  value === undefined ? 'failed' : `${fixed(100 * value, 2)} % points`;
