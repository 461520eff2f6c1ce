/** The page, in the order of the reader's questions. */
import { picture } from '../state/picture.ts';
import { views } from '../views/index.ts';
import { Answer } from './Answer.tsx';
import { LengthControl } from './LengthControl.tsx';
import { ViewCard } from './ViewCard.tsx';

export function Page() {
  const now = picture.value;
  return (
    <>
      <main>
        <Answer />
        {now && (
          <>
            <LengthControl picture={now} />
            <div class="views">
              {views.map((view) => (
                <ViewCard key={view.id} view={view} picture={now} />
              ))}
            </div>
          </>
        )}
      </main>
    </>
  );
}
