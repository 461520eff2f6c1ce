/** One row that leads to every place of the page. */
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
  return (
    <a href={addressOf(id)} aria-current={place.value === id ? 'page' : undefined}>
      {name}
    </a>
  );
}
