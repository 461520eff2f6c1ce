/** A plot of the workbench, as high as there is room for it. */
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { View } from '../drawing/view.ts';
import { PlotArea } from '../parts/PlotArea.tsx';
import { TakeAway } from '../parts/TakeAway.tsx';
import { type Picture, still } from '../state/picture.ts';

/** Least height at which a plot can be read [px]. */
const LEAST = 150;

export function Panel({ view, picture, name }: { view: View; picture: Picture; name: string }) {
  const room = useRef<HTMLDivElement>(null);
  const height = useHeight(room);
  const base = (view.overHand && still.value) || picture;
  const ready = view.ready?.(base) ?? true;
  const words = useMemo(
    () => ({
      reading: view.reading(base),
      summary: ready ? view.summary(base) : 'Not computed yet.',
    }),
    [view, base, ready, ...(view.watch?.() ?? [])],
  );
  const { Above } = view;
  return (
    <section class={`panel ${name}`} id={view.id} aria-labelledby={`${view.id}-title`}>
      <div class="panel-head">
        <h2 id={`${view.id}-title`} title={words.reading}>
          {view.question}
        </h2>
        {Above && <Above />}
        <details class="panel-take">
          <summary>
            About, save<span class="sr">: {view.question}</span>
          </summary>
          <div class="panel-take-box">
            <p class="reading">{words.reading}</p>
            <TakeAway view={view} picture={picture} ready={ready} offered />
          </div>
        </details>
      </div>
      <p class="sr">{words.summary}</p>
      <div class="panel-room" ref={room}>
        {height > 0 && <PlotArea view={view} picture={picture} height={height} near />}
      </div>
    </section>
  );
}

/** Height of the room [px], followed as it changes. */
function useHeight(room: { current: HTMLElement | null }): number {
  const [height, setHeight] = useState(0);
  useLayoutEffect(() => {
    const measure = () => setHeight(Math.max(LEAST, Math.floor(room.current!.clientHeight)));
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(room.current!);
    return () => watcher.disconnect();
  }, []);
  return height;
}
