/** A plotly figure that follows the data while it is near the screen, and sleeps otherwise. */
import type { PlotlyHTMLElement } from 'plotly.js-dist-min';
import { useEffect, useRef, useState } from 'preact/hooks';
import { type Plot as PlainPlot, svgPlot } from '../../sim/index.ts';
import type { Figure } from '../drawing/view.ts';
import { ofThrottle } from '../state/throttle.ts';

type Plotly = typeof import('plotly.js-dist-min');

let library: Promise<Plotly> | undefined;

/** Loads plotly once; the answer's sentence and the plain pictures do not wait for it. */
export function plotly(): Promise<Plotly> {
  library ??= import('plotly.js-dist-min').then(
    (module) => (module as unknown as { default?: Plotly }).default ?? module,
  );
  // What could not be loaded is asked for again by the next plot.
  library.catch(() => {
    library = undefined;
  });
  return library;
}

interface PlotProps {
  figure: Figure;
  /** What is drawn at once, until plotly is there. */
  plain?: PlainPlot | undefined;
  height: number;
  /** Whether it is near the screen. */
  near: boolean;
  /** Told where the reader clicked, in the units of the axes. */
  onPick?: ((x: number, y: number) => void) | undefined;
}

export function Plot({ figure, plain, height, near, onPick }: PlotProps) {
  const box = useRef<HTMLDivElement>(null);
  const painter = useRef<Painter>(undefined);
  const pick = useRef(onPick);
  const [drawn, setDrawn] = useState(false);
  pick.current = onPick;

  useEffect(() => {
    const own = new Painter(box.current!, pick, () => setDrawn(true));
    painter.current = own;
    return () => own.close();
  }, []);
  useEffect(() => {
    if (near) painter.current!.show(figure, height);
  }, [figure, near, height]);

  return (
    <div class="plot-box" style={{ height: `${height}px` }} aria-hidden="true">
      {plain && !drawn && <Plain plot={plain} />}
      <div class="plot" ref={box} />
    </div>
  );
}

/** Markup of the report, which escapes every text. */
function Plain({ plot }: { plot: PlainPlot }) {
  const markup = svgPlot(ofThrottle(plot)).text;
  return <div class="plain" dangerouslySetInnerHTML={{ __html: markup }} />;
}

/** Draws the newest figure at most once a frame, and drops those that were overtaken. */
class Painter {
  private readonly target: HTMLDivElement;
  private readonly pick: { current: PlotProps['onPick'] };
  private readonly onFirst: () => void;
  private next: { figure: Figure; height: number } | undefined;
  private busy = false;
  private closed = false;

  constructor(target: HTMLDivElement, pick: Painter['pick'], onFirst: () => void) {
    this.target = target;
    this.pick = pick;
    this.onFirst = onFirst;
  }

  show(figure: Figure, height: number): void {
    this.next = { figure, height };
    if (!this.busy) void this.paint();
  }

  close(): void {
    this.closed = true;
    void library?.then(({ purge }) => purge(this.target));
  }

  private async paint(): Promise<void> {
    this.busy = true;
    const { react } = await plotly();
    while (this.next && !this.closed) {
      await frame();
      const { figure, height } = this.next;
      this.next = undefined;
      if (this.closed) break;
      const first = !this.target.classList.contains('js-plotly-plot');
      const layout = { ...figure.layout, height, autosize: true };
      await react(this.target, figure.data, layout, { displayModeBar: false, responsive: true });
      if (first) this.begin();
    }
    this.busy = false;
  }

  private begin(): void {
    this.onFirst();
    (this.target as unknown as PlotlyHTMLElement).on('plotly_click', ({ points }) => {
      const point = points[0];
      if (point) this.pick.current?.(Number(point.x), Number(point.y));
    });
  }
}

/** The next frame; soon where there are none, as on a page in the background. */
const frame = () =>
  new Promise<void>((resolve) => {
    requestAnimationFrame(() => resolve());
    setTimeout(resolve, 60);
  });
