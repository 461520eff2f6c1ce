/** A place of questions: its views, one after the other. */
import { ViewCard } from '../parts/ViewCard.tsx';
import type { Picture } from '../state/picture.ts';
import { type Place, viewsFor } from '../views/index.ts';

export function StudyPlace({ place, picture }: { place: Place; picture: Picture }) {
  return (
    <div class="views">
      {viewsFor(place, picture).map((view) => (
        <ViewCard key={view.id} view={view} picture={picture} />
      ))}
    </div>
  );
}
