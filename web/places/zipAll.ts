/** All that the page shows now as one ZIP: scenario, report, and each plot as PNG, SVG and CSV. */
import { strToU8, zipSync } from 'fflate';
import { reportHtml, sweepReport } from '../../sim/index.ts';
import { csv } from '../drawing/table.ts';
import type { View } from '../drawing/view.ts';
import { type Format, pictureName, pictureUrl } from '../parts/savePicture.ts';
import { saveBlob } from '../save.ts';
import { fileStem, numbersName } from '../state/files.ts';
import type { Picture } from '../state/picture.ts';
import { source } from '../state/scenario.ts';
import { curvesView, lengthMapView, places, viewsFor } from '../views/index.ts';

type Files = Record<string, Uint8Array>;

/** @param tell told of each plot before it is drawn: how many of how many */
export async function zipAll(
  picture: Picture,
  tell: (done: number, total: number) => void,
): Promise<void> {
  const views = [curvesView, lengthMapView, ...places.flatMap((place) => viewsFor(place, picture))];
  const ready = views.filter((view) => view.ready?.(picture) ?? true);
  const files: Files = texts(picture);
  for (const [i, view] of ready.entries()) {
    tell(i, ready.length);
    files[numbersName(view)] = strToU8(csv(view.table(picture)));
    for (const format of ['png', 'svg'] as const) {
      files[pictureName(view, format)] = await drawn(view, picture, format);
    }
  }
  // Pictures are packed already; the rest is small.
  const packed = zipSync(files, { level: 6 });
  saveBlob(`${fileStem()}.zip`, new Blob([packed as BlobPart], { type: 'application/zip' }));
}

function texts({ scenario, study }: Picture): Files {
  const { file, text } = source.peek();
  const name = /\.ya?ml$/i.test(file) ? file : `${fileStem()}.yaml`;
  return {
    [name]: strToU8(text),
    ...(study.full && {
      [`${fileStem()}-report.html`]: strToU8(reportHtml(sweepReport(study.full, scenario))),
    }),
  };
}

/** The bytes of a data URL, which holds base64 or, of an SVG, escaped text. */
async function drawn(view: View, picture: Picture, format: Format): Promise<Uint8Array> {
  const [head = '', body = ''] = splitOnce(await pictureUrl(view, picture, format));
  if (!head.endsWith(';base64')) return strToU8(decodeURIComponent(body));
  return Uint8Array.from(atob(body), (char) => char.charCodeAt(0));
}

const splitOnce = (url: string) => {
  const at = url.indexOf(',');
  return [url.slice(0, at), url.slice(at + 1)];
};
