/** The page, in the order of the reader's questions. */

import { Answer } from './parts/Answer.tsx';
import { Header } from './parts/Header.tsx';
import { LengthBar, LengthControl } from './parts/LengthControl.tsx';
import { Trust } from './parts/Trust.tsx';
import { ViewCard } from './parts/ViewCard.tsx';
import { YourEngine } from './parts/YourEngine.tsx';
import { picture } from './state/picture.ts';
import { proof, views } from './views/index.ts';

export function Page() {
  const now = picture.value;
  return (
    <>
      <a class="skip" href="#answer">
        Skip to the answer
      </a>
      <Header />
      <main>
        <div class="opening">
          <Answer />
          {now && <ViewCard view={proof} picture={now} />}
        </div>
        {now && (
          <div class="explore">
            <LengthControl picture={now} />
            <LengthBar picture={now} />
            <div class="views">
              {views
                .filter((view) => view.applies?.(now) ?? true)
                .map((view) => (
                  <ViewCard key={view.id} view={view} picture={now} />
                ))}
            </div>
          </div>
        )}
        <YourEngine />
        {now && <Trust picture={now} />}
      </main>
    </>
  );
}
