/** A plot as a picture of its own, with title, engine and paper, so that it stands alone. */
import type { View } from '../drawing/view.ts';
import { rpm } from '../format.ts';
import { saveUrl } from '../save.ts';
import { fileStem } from '../state/files.ts';
import type { Picture } from '../state/picture.ts';
import { look } from '../state/theme.ts';
import { lengthText } from '../state/unit.ts';
import { whySpeed } from '../state/why.ts';
import { plotly } from './Plot.tsx';

/** Size of saved pictures [px]; PNG is drawn at twice the density. */
const PICTURE = { width: 1120, height: 560 } as const;

/** Room that a saved picture has above for its title and below for its key [px]. */
const ABOVE = 64;
const BELOW = 44;

/** A picture knows no font of the page, so it takes the plainest. */
export async function savePicture(view: View, picture: Picture, format: Format): Promise<void> {
  saveUrl(pictureName(view, format), await pictureUrl(view, picture, format));
}

export type Format = 'png' | 'svg';

export const pictureName = (view: View, format: Format) => `${fileStem()}-${view.id}.${format}`;

/** The picture as a data URL. */
export async function pictureUrl(view: View, picture: Picture, format: Format): Promise<string> {
  const library = await plotly();
  const colours = { ...look.peek(), font: 'sans-serif' };
  const { data, layout } = view.figure(picture, colours, PICTURE.height);
  const { t = 0, b = 0 } = layout.margin ?? {};
  const key = view.lines === true || layout.showlegend === true;
  const height = PICTURE.height + ABOVE + BELOW;
  const alone = {
    ...layout,
    paper_bgcolor: colours.paper,
    title: {
      text: `${view.question}<br><sub>${escaped(under(picture))}</sub>`,
      x: 0.02,
      y: 1 - 34 / height,
      xanchor: 'left',
      yanchor: 'top',
      font: { color: colours.ink, size: 18 },
    },
    showlegend: key,
    legend: { orientation: 'h', x: 0, xanchor: 'left', yref: 'container', y: 0, yanchor: 'bottom' },
    margin: { ...layout.margin, t: t + ABOVE, b: b + (key ? BELOW : 0) },
  };
  const size = { width: PICTURE.width, height, format, scale: format === 'png' ? 2 : 1 };
  return library.toImage({ data, layout: alone } as never, size);
}

/** Engine, lengths and the speed that is looked at. */
function under({ scenario, curves }: Picture): string {
  const lengths = curves.map(({ length }) => lengthText(length)).join(', ');
  const speed = whySpeed.peek();
  return `${scenario.title}; ${lengths}${speed === undefined ? '' : `; wave at ${rpm(speed)}`}`;
}

/** Plotly reads a little HTML in texts; a title must not. */
function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
