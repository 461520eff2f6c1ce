/**
 * The workbench: the intake whose mouth is dragged with the wave above it on its axis, the curves that answer
 * beside it, and the map of all lengths below those on their axis.
 */
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { benchTrace, shownLength } from '../parts/benchTrace.ts';
import { Dial } from '../parts/Dial.tsx';
import { IntakeDrawing } from '../parts/IntakeDrawing.tsx';
import { WaveAbove } from '../parts/WaveAbove.tsx';
import { type Picture, still } from '../state/picture.ts';
import { wanted } from '../state/why.ts';
import { curvesView, lengthMapView } from '../views/index.ts';
import { Panel } from './Panel.tsx';

export function Bench({ picture }: { picture: Picture }) {
  useEffect(() => {
    wanted.value = true;
  }, []);
  const shown = useShown(picture);
  const length = shownLength(picture);
  const bench = useRef<HTMLDivElement>(null);
  return (
    <>
      <Pager bench={bench} />
      <div class="bench" ref={bench}>
        <div class="left">
          <WaveAbove picture={still.value ?? picture} shown={shown} />
          <section class="panel intake-panel" aria-labelledby="intake-title">
            <h2 id="intake-title" class="sr">
              The intake, and the length to try
            </h2>
            <IntakeDrawing
              picture={picture}
              length={length}
              trace={shown?.length === length ? shown.trace : undefined}
            />
            <Dial picture={picture} />
          </section>
        </div>
        <Panel view={curvesView} picture={picture} name="curves" />
        <Panel view={lengthMapView} picture={picture} name="map" />
      </div>
    </>
  );
}

/** The cycle on show; the same thing while nothing of it changes, so that a drag leaves its picture alone. */
function useShown(picture: Picture) {
  const now = benchTrace(picture);
  return useMemo(() => now, [now?.trace, now?.role, now?.length]);
}

const PANELS = [
  { name: 'Curves', at: '.curves' },
  { name: 'Wave', at: '.left' },
  { name: 'Map', at: '.map' },
];

/** On a phone, where one panel stands at a time: leads to each of them. */
function Pager({ bench }: { bench: { current: HTMLElement | null } }) {
  const show = (at: string) =>
    bench.current?.querySelector(at)?.scrollIntoView({ block: 'nearest', inline: 'center' });
  return (
    <div class="pager">
      {PANELS.map(({ name, at }) => (
        <button key={name} type="button" onClick={() => show(at)}>
          {name}
        </button>
      ))}
    </div>
  );
}
