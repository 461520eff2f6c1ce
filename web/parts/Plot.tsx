/** A plotly figure that follows the data while it is near the screen, and sleeps otherwise. */
import type { PlotlyHTMLElement } from 'plotly.js-cartesian-dist-min';
import { useEffect, useRef } from 'preact/hooks';
import type { Figure } from '../drawing/view.ts';

type Plotly = typeof import('plotly.js-cartesian-dist-min');

let library: Promise<Plotly> | undefined;

/** Loads plotly once; the answer's sentence does not wait for it. */
export function plotly(): Promise<Plotly> {
  library ??= import('plotly.js-cartesian-dist-min').then(
    (module) => (module as unknown as { default?: Plotly }).default ?? module,
  );
  return library;
}

interface PlotProps {
  figure: Figure;
  height: number;
  /** Whether it is near the screen. */
  near: boolean;
  /** Told where the reader clicked, in the units of the axes. */
  onPick?: ((x: number, y: number) => void) | undefined;
}

export function Plot({ figure, height, near, onPick }: PlotProps) {
  const box = useRef<HTMLDivElement>(null);
  const pick = useRef(onPick);
  pick.current = onPick;

  useEffect(() => {
    if (!near) return;
    const target = box.current!;
    let live = true;
    void plotly().then(async (library) => {
      if (!live) return;
      const first = !target.classList.contains('js-plotly-plot');
      const layout = { ...figure.layout, height, autosize: true };
      await library.react(target, figure.data, layout, { displayModeBar: false, responsive: true });
      if (first) listen(target, pick);
    });
    return () => {
      live = false;
    };
  }, [figure, near, height]);

  useEffect(() => {
    const target = box.current;
    return () => void library?.then(({ purge }) => target && purge(target));
  }, []);

  return <div class="plot" ref={box} style={{ height: `${height}px` }} aria-hidden="true" />;
}

function listen(target: HTMLElement, pick: { current: PlotProps['onPick'] }): void {
  (target as PlotlyHTMLElement).on('plotly_click', ({ points }) => {
    const point = points[0];
    if (point) pick.current?.(Number(point.x), Number(point.y));
  });
}
