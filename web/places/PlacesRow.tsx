/** One row that leads to every place of the page. */
import { useEffect, useRef } from 'preact/hooks';
import type { Picture } from '../state/picture.ts';
import { addressOf, HOME, place } from '../state/place.ts';
import { places, viewsFor } from '../views/index.ts';

export function PlacesRow({ picture }: { picture: Picture | undefined }) {
  const posed = places.filter((one) => picture && viewsFor(one, picture).length > 0);
  return (
    <nav class="places" aria-label="Places of the page">
      <To id={HOME} name="Length" />
      {posed.map(({ id, name }) => (
        <To key={id} id={id} name={name} />
      ))}
      <To id="trust" name="Limits" />
      <To id="sheet" name="Cut sheet" />
    </nav>
  );
}

function To({ id, name }: { id: string; name: string }) {
  const link = useRef<HTMLAnchorElement>(null);
  const here = place.value === id;
  // Where the row is too long for the window, the name of the place that is open is brought into sight.
  useEffect(() => {
    if (here) bringIntoSight(link.current!);
  }, [here]);
  return (
    <a href={addressOf(id)} aria-current={here ? 'page' : undefined} ref={link}>
      {name}
    </a>
  );
}

/** So much of the next name is seen that the row is known to go on [px]. */
const PEEK = 40;

/** By the row's own scrolling: `scrollIntoView` would also have the first Tab begin here, and not at the page's top. */
function bringIntoSight(link: HTMLElement): void {
  const row = link.parentElement!;
  const [at, within] = [link.getBoundingClientRect(), row.getBoundingClientRect()];
  row.scrollLeft +=
    Math.min(0, at.left - PEEK - within.left) + Math.max(0, at.right + PEEK - within.right);
}
