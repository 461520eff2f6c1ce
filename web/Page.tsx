/** The page: engine and answer at the top, the place that is open below, the engine's drawer beside. */

import { useEffect } from 'preact/hooks';
import { Answer } from './parts/Answer.tsx';
import { Drawer } from './parts/Drawer.tsx';
import { TopBar } from './parts/TopBar.tsx';
import { Trust } from './parts/Trust.tsx';
import { Bench } from './places/Bench.tsx';
import { CutSheet } from './places/CutSheet.tsx';
import { PlacesRow } from './places/PlacesRow.tsx';
import { StudyPlace } from './places/StudyPlace.tsx';
import { picture, still } from './state/picture.ts';
import { drawer, place } from './state/place.ts';
import { type Place, places } from './views/index.ts';

export function Page() {
  const now = still.value;
  const open = place.value;
  useEffect(() => scrollTo({ top: 0 }), [open]);
  return (
    <div class={drawer.value ? 'page drawn' : 'page'}>
      <button type="button" class="skip" onClick={toAnswer}>
        Skip to the answer
      </button>
      <TopBar />
      <PlacesRow picture={now} />
      <main class={`at-${open}`}>
        <Answer />
        {now && <Inside open={open} />}
      </main>
      <Drawer />
    </div>
  );
}

function Inside({ open }: { open: string }) {
  const study = places.find(({ id }) => id === open);
  const other = study || open === 'trust' || open === 'sheet';
  return other ? <Other open={open} study={study} /> : <Bench />;
}

/** What follows the hand as a whole; the workbench leaves that to its parts. */
function Other({ open, study }: { open: string; study: Place | undefined }) {
  const now = picture.value;
  if (!now) return null;
  if (study) return <StudyPlace place={study} picture={now} key={open} />;
  return open === 'trust' ? <Trust picture={now} /> : <CutSheet picture={now} />;
}

/** No link, for the address says which place is open. */
function toAnswer(): void {
  document.getElementById('answer')?.focus();
}
