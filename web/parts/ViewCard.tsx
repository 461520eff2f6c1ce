/** A view on the page: question, how to read it, plot, picture and numbers to take away. */
import { useEffect, useRef } from 'preact/hooks';
import type { View } from '../drawing/view.ts';
import type { Picture } from '../state/picture.ts';
import { printing } from '../state/theme.ts';
import { ofThrottle } from '../state/throttle.ts';
import { LineKey } from './LineKey.tsx';
import { useNear } from './near.ts';
import { PlotArea } from './PlotArea.tsx';
import { TakeAway } from './TakeAway.tsx';

const HEIGHT = 380;

export function ViewCard({ view, picture }: { view: View; picture: Picture }) {
  const card = useRef<HTMLElement>(null);
  // On paper there is no scrolling, so all plots are drawn.
  const near = useNear(card) || printing.value;
  const ready = view.ready?.(picture) ?? true;
  useEffect(() => {
    if (near) view.onNear?.();
  }, [near, view]);
  const { Above, Below } = view;
  return (
    <section
      class={`view ${view.width} ${view.asked ? 'asked' : ''}`}
      id={view.id}
      aria-labelledby={`${view.id}-title`}
      ref={card}
    >
      <div class="view-says">
        <h2 id={`${view.id}-title`}>{view.question}</h2>
        <p class="reading">{view.reading(picture)}</p>
        {view.lines && <LineKey curves={picture.curves} />}
        {Above && <Above />}
        <p class="sr">{ready ? ofThrottle(view.summary(picture)) : 'Not computed yet.'}</p>
      </div>
      <div class="view-shows">
        <PlotArea view={view} picture={picture} height={view.height ?? HEIGHT} near={near} />
      </div>
      {Below && (
        <div class="view-adds">
          <Below />
        </div>
      )}
      <TakeAway view={view} picture={picture} ready={ready} offered={ready || !view.asked} />
    </section>
  );
}
