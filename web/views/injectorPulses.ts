/** How long each injector would be open alone, against what it can do. */
import type { Data, Layout } from 'plotly.js-dist-min';
import { injectTables, plotted, quantities as q } from '../../sim/index.ts';
import type { View } from '../drawing/view.ts';
import { withKey } from '../drawing/withKey.ts';
import { baseLayout, type Look } from '../look.ts';
import { isPlaced, placed, placement } from '../state/placement.ts';

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
      .map((pulse) => `${pulse.name}: ${injectTables.verdict(pulse)}`)
      .join('; '),
  ready: () => placed() !== undefined,
  figure: (_, look) => {
    const layout = baseLayout(look, '', 'open for [ms]');
    const names = pulses().map(({ name }) => name);
    const bars = BARS.map(({ key, name, hatch, color }) => ({
      type: 'bar',
      name,
      x: names,
      y: plotted(
        OPEN,
        pulses().map((pulse) => pulse[key]),
      ),
      text: pulses().map((pulse) => q.shown(OPEN, pulse[key])),
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
  table: () => injectTables.pulsesTable(placed()!),
  watch: () => [placement.state.value],
};

const OPEN = q.milliseconds('open_ms', 'open for', 2);

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
