/** What of a view can be taken away: picture, numbers; and the numbers to read here. */
import { useState } from 'preact/hooks';
import { csv } from '../drawing/table.ts';
import type { View } from '../drawing/view.ts';
import { saveText } from '../save.ts';
import { numbersName } from '../state/files.ts';
import type { Picture } from '../state/picture.ts';
import { DataTable } from './DataTable.tsx';
import { savePicture } from './savePicture.ts';

interface TakeAwayProps {
  view: View;
  picture: Picture;
  ready: boolean;
  /** Whether there is anything to take, now or soon. */
  offered: boolean;
}

export function TakeAway({ view, picture, ready, offered }: TakeAwayProps) {
  const [open, setOpen] = useState(false);
  const of = <span class="sr"> of: {view.question}</span>;
  return (
    <>
      {offered && (
        <p class="take">
          <Saves view={view} picture={picture} ready={ready} />
          <button
            type="button"
            disabled={!ready}
            aria-expanded={open}
            onClick={() => setOpen(!open)}
          >
            {open ? 'Hide numbers' : 'Show numbers'}
            {of}
          </button>
        </p>
      )}
      {open && ready && <DataTable table={view.table(picture)} caption={view.question} />}
    </>
  );
}

function Saves({ view, picture, ready }: Omit<TakeAwayProps, 'offered'>) {
  const of = <span class="sr"> of: {view.question}</span>;
  const saveNumbers = () => saveText(numbersName(view), csv(view.table(picture)), 'text/csv');
  return (
    <>
      {(['png', 'svg'] as const).map((format) => (
        <button
          key={format}
          type="button"
          disabled={!ready}
          onClick={() => void savePicture(view, picture, format)}
        >
          Save picture{of} ({format.toUpperCase()})
        </button>
      ))}
      <button type="button" disabled={!ready} onClick={saveNumbers}>
        Save numbers{of} (CSV)
      </button>
    </>
  );
}
