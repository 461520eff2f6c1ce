/** How long each injector would be open alone, against what it can do. */
import type { Data, Layout } from 'plotly.js-cartesian-dist-min';
import { fixed } from '../format.ts';
import { isPlaced, placed, placement } from '../state/placement.ts';
import { baseLayout, type Look } from './look.ts';
import type { View } from './view.ts';
import { withKey } from './withKey.ts';

export const injectorPulsesView: View = {
  id: 'injector-pulses',
  question: 'Can one injector do idle and full load?',
  width: 'half',
  height: 400,
  asked: true,
  applies: isPlaced,
  reading: () =>
    'How long each injector would be open were it alone, at full load and the highest speed and at idle. Full load must stay below the cycle, idle above the shortest pulse that repeats well: a large injector fails the one, a small one the other.',
  summary: () =>
    pulses()
      .map(({ name, servesFull, servesIdle }) => `${name}: ${verdict(servesFull, servesIdle)}`)
      .join('; '),
  ready: () => placed() !== undefined,
  figure: (_, look) => {
    const layout = baseLayout(look, '', 'open for [ms]');
    const names = pulses().map(({ name }) => name);
    const bars = BARS.map(({ key, name, hatch, color }) => ({
      type: 'bar',
      name,
      x: names,
      y: pulses().map((pulse) => 1e3 * pulse[key]),
      text: pulses().map((pulse) => fixed(1e3 * pulse[key], 2)),
      textposition: 'outside',
      textfont: { color: look.ink },
      cliponaxis: false,
      marker: {
        color: color(look),
        pattern: { shape: hatch, fgcolor: look.paper, fillmode: 'overlay', size: 6, solidity: 0.3 },
      },
      hoverinfo: 'skip',
    }));
    return {
      data: bars as unknown as Partial<Data>[],
      layout: withKey(
        look,
        {
          ...layout,
          barmode: 'group',
          hovermode: false,
          xaxis: { ...layout.xaxis, tickformat: '' },
        } as Partial<Layout>,
        2,
      ),
    };
  },
  table: () => ({
    columns: [
      { name: 'injector', unit: '' },
      { name: 'pulse at full load', unit: 'ms', decimals: 2 },
      { name: 'share of the cycle', unit: '%', decimals: 0 },
      { name: 'pulse at idle', unit: 'ms', decimals: 2 },
      { name: 'shortest that repeats well', unit: 'ms', decimals: 2 },
      { name: 'alone', unit: '' },
    ],
    rows: pulses().map((pulse) => [
      pulse.name,
      1e3 * pulse.fullPulse,
      100 * pulse.fullDuty,
      1e3 * pulse.idlePulse,
      1e3 * pulse.smallestPulse,
      verdict(pulse.servesFull, pulse.servesIdle),
    ]),
  }),
  watch: () => [placement.state.value],
};

const pulses = () => placed()?.pulses ?? [];

const BARS = [
  { key: 'fullPulse', name: 'full load', hatch: '', color: (look: Look) => look.role.best },
  { key: 'idlePulse', name: 'idle', hatch: '/', color: (look: Look) => look.role.hand },
  {
    key: 'smallestPulse',
    name: 'shortest that repeats well',
    hatch: '.',
    color: (look: Look) => look.role.now,
  },
] as const;

function verdict(full: boolean, idle: boolean): string {
  if (full && idle) return 'can do both';
  if (full) return 'too large for idle';
  return idle ? 'too small for full load' : 'can do neither';
}
