/** A plot of the workbench, as high as there is room for it. */
import { useMemo, useRef, useState } from 'preact/hooks';
import type { View } from '../drawing/view.ts';
import { PlotArea } from '../parts/PlotArea.tsx';
import { useSize } from '../parts/size.ts';
import { TakeAway } from '../parts/TakeAway.tsx';
import { type Picture, picture } from '../state/picture.ts';

/** Least height at which a plot can be read [px]. */
const LEAST = 150;

export function Panel({ view, picture, name }: { view: View; picture: Picture; name: string }) {
  const room = useRef<HTMLDivElement>(null);
  const size = useSize(room);
  const height = size && Math.max(LEAST, size[1]);
  const ready = view.ready?.(picture) ?? true;
  const words = useMemo(
    () => ({
      reading: view.reading(picture),
      summary: ready ? view.summary(picture) : 'Not computed yet.',
    }),
    [view, picture, ready, ...(view.watch?.() ?? [])],
  );
  const { Above } = view;
  return (
    <section class={`panel ${name}`} id={view.id} aria-labelledby={`${view.id}-title`}>
      <div class="panel-head">
        <h2 id={`${view.id}-title`} title={words.reading}>
          {view.question}
        </h2>
        {Above && <Above />}
        <About view={view} reading={words.reading} ready={ready} />
      </div>
      <p class="sr">{words.summary}</p>
      <div class="panel-room" ref={room}>
        {height && <PlotArea view={view} picture={picture} height={height} near />}
      </div>
    </section>
  );
}

interface AboutProps {
  view: View;
  reading: string;
  ready: boolean;
}

/** What the plot shows and what can be taken away of it, with the length that is tried. */
function About({ view, reading, ready }: AboutProps) {
  const [open, setOpen] = useState(false);
  const now = open && picture.value;
  return (
    <details class="panel-take" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>
        About, save<span class="sr">: {view.question}</span>
      </summary>
      {now && (
        <div class="panel-take-box">
          <p class="reading">{reading}</p>
          <TakeAway view={view} picture={now} ready={ready} offered />
        </div>
      )}
    </details>
  );
}
