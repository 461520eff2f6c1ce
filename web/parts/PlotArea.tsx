/** The plot of a view, or why there is none. */
import { useMemo } from 'preact/hooks';
import type { Figure, View } from '../drawing/view.ts';
import { type Picture, still } from '../state/picture.ts';
import { look } from '../state/theme.ts';
import { Plot } from './Plot.tsx';

interface PlotAreaProps {
  view: View;
  picture: Picture;
  height: number;
  near: boolean;
}

export function PlotArea({ view, picture: whole, height, near }: PlotAreaProps) {
  const picture = (view.overHand && still.value) || whole;
  const ready = view.ready?.(picture) ?? true;
  const colours = look.value;
  const figure = useMemo(
    () => (ready ? view.figure(picture, colours, height) : undefined),
    [view, picture, colours, ready, height, ...(view.watch?.() ?? [])],
  );
  const { Over } = view;
  if (!figure) return view.asked ? null : <Empty picture={picture} height={height} />;
  const drag = view.onDrag && dragging(figure, (...at) => view.onDrag!(picture, ...at));
  return (
    <div class={drag ? 'plot-frame drags' : 'plot-frame'} {...drag}>
      <Plot
        figure={figure}
        plain={view.plain?.(picture)}
        height={height}
        near={near}
        onPick={view.onPick && ((x, y) => view.onPick!(picture, x, y))}
      />
      {Over && <Over height={height} />}
    </div>
  );
}

/** Pointer events of a frame as places in the units of its plot's axes. */
function dragging({ layout }: Figure, onDrag: (x: number, y: number, begins: boolean) => void) {
  const { l = 0, r = 0, t = 0, b = 0 } = layout.margin ?? {};
  const [xs, ys] = [layout.xaxis?.range, layout.yaxis?.range] as [number, number][];
  const take = ({ clientX, clientY, currentTarget, type }: PointerEvent) => {
    const box = (currentTarget as Element).getBoundingClientRect();
    const across = (clientX - box.left - l) / (box.width - l - r);
    const up = (box.bottom - b - clientY) / (box.height - t - b);
    if (across < 0 || across > 1 || up < 0 || up > 1) return;
    const [x, y] = [xs![0] + across * (xs![1] - xs![0]), ys![0] + up * (ys![1] - ys![0])];
    onDrag(x, y, type === 'pointerdown');
  };
  return {
    // The pointer is ours from here: the plotting library would lay a cover over the page that takes its moves.
    onPointerDown: (event: PointerEvent) => {
      event.preventDefault();
      (event.currentTarget as Element).setPointerCapture(event.pointerId);
      take(event);
    },
    onPointerMove: (event: PointerEvent) => {
      if (event.buttons === 1) take(event);
    },
  };
}

function Empty({ picture, height }: { picture: Picture; height: number }) {
  return (
    <div class="plot waiting" style={{ height: `${height}px` }}>
      <p>{reasonOf(picture)}</p>
    </div>
  );
}

/** Why there is nothing to draw. */
function reasonOf({ study: { stage, message, progress } }: Picture): string {
  if (stage === 'failed') return `Nothing to draw: the computation failed: ${message}`;
  if (stage === 'cancelled') return 'Nothing to draw: computing was stopped before this was known.';
  if (stage === 'done') return 'Nothing to draw: no point of this could be computed.';
  return `Not known yet: ${progress.done} of ${progress.total} points are computed.`;
}
