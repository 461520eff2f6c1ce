/**
 * The workbench: the intake whose mouth is dragged with the wave above it on its axis, the curves that answer
 * beside it, and the map of all lengths below those on their axis.
 */
import { useEffect, useRef, useState } from 'preact/hooks';
import { shownLength, shownTrace } from '../parts/benchTrace.ts';
import { Dial } from '../parts/Dial.tsx';
import { IntakeDrawing } from '../parts/IntakeDrawing.tsx';
import { WaveAbove } from '../parts/WaveAbove.tsx';
import { picture, still } from '../state/picture.ts';
import { wanted } from '../state/why.ts';
import { curvesView, lengthMapView } from '../views/index.ts';
import { Panel } from './Panel.tsx';

/** Drawn anew when the answer or the cycle on show changes; what follows the hand is parts of its own. */
export function Bench() {
  useEffect(() => {
    wanted.value = true;
  }, []);
  const bench = useRef<HTMLDivElement>(null);
  const now = still.value;
  if (!now) return null;
  return (
    <>
      <Pager bench={bench} />
      <div class="bench" ref={bench}>
        <div class="left">
          <WaveAbove picture={now} shown={shownTrace.value} />
          <section class="panel intake-panel" aria-labelledby="intake-title">
            <h2 id="intake-title" class="sr">
              The intake, and the length to try
            </h2>
            <Tried />
          </section>
        </div>
        <Panel view={curvesView} picture={now} name="curves" />
        <Panel view={lengthMapView} picture={now} name="map" />
      </div>
    </>
  );
}

/** The intake at the length on show, and what moves it. */
function Tried() {
  const now = picture.value;
  if (!now) return null;
  const length = shownLength(now);
  const shown = shownTrace.value;
  return (
    <>
      <IntakeDrawing
        picture={now}
        length={length}
        trace={shown?.length === length ? shown.trace : undefined}
      />
      <Dial picture={now} />
    </>
  );
}

const PANELS = [
  { name: 'Curves', at: '.curves' },
  { name: 'Wave', at: '.left' },
  { name: 'Map', at: '.map' },
];

/** On a phone, where one panel stands at a time: leads to each of them. */
function Pager({ bench }: { bench: { current: HTMLElement | null } }) {
  const shown = useShown(bench);
  const show = (at: string) =>
    bench.current?.querySelector(at)?.scrollIntoView({ block: 'nearest', inline: 'center' });
  return (
    <div class="pager">
      {PANELS.map(({ name, at }) => (
        <button
          key={name}
          type="button"
          aria-current={shown === at ? 'true' : undefined}
          onClick={() => show(at)}
        >
          {name}
        </button>
      ))}
    </div>
  );
}

/** Which panel stands in the window, swiped or led there. */
function useShown(bench: { current: HTMLElement | null }): string | undefined {
  const [shown, setShown] = useState<string>();
  useEffect(() => {
    const frame = bench.current;
    if (!frame) return;
    const watch = new IntersectionObserver(
      (seen) => {
        const own = seen.find(({ isIntersecting }) => isIntersecting)?.target;
        if (own) setShown(PANELS.find(({ at }) => own.matches(at))?.at);
      },
      { root: frame, threshold: 0.6 },
    );
    for (const { at } of PANELS) {
      const panel = frame.querySelector(at);
      if (panel) watch.observe(panel);
    }
    return () => watch.disconnect();
  }, [bench]);
  return shown;
}
