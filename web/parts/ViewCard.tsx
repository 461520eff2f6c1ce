/** A view on the page: question, how to read it, plot, picture and numbers to take away. */
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { csv } from '../drawing/table.ts';
import type { View } from '../drawing/view.ts';
import { saveText, saveUrl } from '../save.ts';
import { fileStem } from '../state/files.ts';
import type { Picture } from '../state/picture.ts';
import { look, printing } from '../state/theme.ts';
import { DataTable } from './DataTable.tsx';
import { LineKey } from './LineKey.tsx';
import { useNear } from './near.ts';
import { Plot, plotly } from './Plot.tsx';

const HEIGHT = 380;

/** Size of saved pictures [px], drawn at twice the density. */
const PICTURE = { width: 1120, height: 560, scale: 2 } as const;

export function ViewCard({ view, picture }: { view: View; picture: Picture }) {
  const [open, setOpen] = useState(false);
  const card = useRef<HTMLElement>(null);
  // On paper there is no scrolling, so all plots are drawn.
  const near = useNear(card) || printing.value;
  const ready = view.ready?.(picture) ?? true;
  useEffect(() => {
    if (near) view.onNear?.();
  }, [near, view]);
  const colours = look.value;
  const figure = useMemo(
    () => (ready ? view.figure(picture, colours) : undefined),
    [view, picture, colours, ready, ...(view.watch?.() ?? [])],
  );
  const height = view.height ?? HEIGHT;
  const { Above, Below, Over } = view;
  return (
    <section
      class={`view ${view.width}`}
      id={view.id}
      aria-labelledby={`${view.id}-title`}
      ref={card}
    >
      <h2 id={`${view.id}-title`}>{view.question}</h2>
      <p class="reading">{view.reading(picture)}</p>
      {view.lines && <LineKey curves={picture.curves} />}
      {Above && <Above />}
      <p class="sr">{ready ? view.summary(picture) : 'Not computed yet.'}</p>
      {figure ? (
        <div class="plot-frame">
          <Plot
            figure={figure}
            height={height}
            near={near}
            onPick={view.onPick && ((x, y) => view.onPick!(picture, x, y))}
          />
          {Over && <Over />}
        </div>
      ) : (
        !view.asked && (
          <div class="plot waiting" style={{ height: `${height}px` }}>
            <p>This appears once the answer is computed.</p>
          </div>
        )
      )}
      {Below && <Below />}
      {(ready || !view.asked) && (
        <p class="take">
          <button type="button" disabled={!ready} onClick={() => void savePicture(view, picture)}>
            Save picture<span class="sr"> of: {view.question}</span> (PNG)
          </button>
          <button
            type="button"
            disabled={!ready}
            onClick={() =>
              saveText(`${fileStem()}-${view.id}.csv`, csv(view.table(picture)), 'text/csv')
            }
          >
            Save numbers<span class="sr"> of: {view.question}</span> (CSV)
          </button>
          <button
            type="button"
            disabled={!ready}
            aria-expanded={open}
            onClick={() => setOpen(!open)}
          >
            {open ? 'Hide numbers' : 'Show numbers'}
            <span class="sr"> of: {view.question}</span>
          </button>
        </p>
      )}
      {open && ready && <DataTable table={view.table(picture)} caption={view.question} />}
    </section>
  );
}

/** Room that a saved picture has above for its title and below for its key [px]. */
const ABOVE = 64;
const BELOW = 44;

/**
 * Drawn afresh with title, key and paper, so that the picture stands alone. A picture of its own knows
 * no font of the page, so it takes the plainest.
 */
async function savePicture(view: View, picture: Picture): Promise<void> {
  const library = await plotly();
  const colours = { ...look.peek(), font: 'sans-serif' };
  const { data, layout } = view.figure(picture, colours);
  const { t = 0, b = 0 } = layout.margin ?? {};
  const key = view.lines === true || layout.showlegend === true;
  const size = { ...PICTURE, height: PICTURE.height + ABOVE + BELOW, format: 'png' } as const;
  const alone = {
    ...layout,
    paper_bgcolor: colours.paper,
    title: {
      text: `${view.question}<br><sub>${escaped(picture.scenario.title)}</sub>`,
      x: 0.02,
      y: 1 - 34 / size.height,
      xanchor: 'left',
      yanchor: 'top',
      font: { color: colours.ink, size: 18 },
    },
    showlegend: key,
    legend: { orientation: 'h', x: 0, xanchor: 'left', yref: 'container', y: 0, yanchor: 'bottom' },
    margin: { ...layout.margin, t: t + ABOVE, b: b + (key ? BELOW : 0) },
  };
  const url = await library.toImage({ data, layout: alone } as never, size);
  saveUrl(`${fileStem()}-${view.id}.png`, url);
}

/** Plotly reads a little HTML in texts; a title must not. */
function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
