/** What of a view can be taken away: picture, numbers; and the numbers to read here. */
import { csv } from '../drawing/table.ts';
import type { View } from '../drawing/view.ts';
import { saveText } from '../save.ts';
import { fileStem } from '../state/files.ts';
import type { Picture } from '../state/picture.ts';
import { savePicture } from './savePicture.ts';

interface TakeAwayProps {
  view: View;
  picture: Picture;
  ready: boolean;
  /** Whether the numbers are shown, and what shows or hides them. */
  open: boolean;
  onToggle(): void;
}

export function TakeAway({ view, picture, ready, open, onToggle }: TakeAwayProps) {
  const of = <span class="sr"> of: {view.question}</span>;
  return (
    <p class="take">
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
      <button
        type="button"
        disabled={!ready}
        onClick={() =>
          saveText(`${fileStem()}-${view.id}.csv`, csv(view.table(picture)), 'text/csv')
        }
      >
        Save numbers{of} (CSV)
      </button>
      <button type="button" disabled={!ready} aria-expanded={open} onClick={onToggle}>
        {open ? 'Hide numbers' : 'Show numbers'}
        {of}
      </button>
    </p>
  );
}
