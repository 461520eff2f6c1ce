/** Icons of the installed page: the mark on the page's paper, as phones ask for it. `tests/page/icons.ts` draws them. */

export interface Icon {
  /** Its name in `web/public`. */
  file: string;
  /** Width and height [px]. */
  size: number;
  /** Share of the width that the mark's own square takes. */
  mark: number;
  /** Radius of the paper's corners over the width; outside them nothing is drawn. */
  corner: number;
  purpose?: 'any' | 'maskable';
}

const PAPER = '#faf9f5';

/**
 * A maskable icon is cut to any shape that holds the circle of 0.4 of its width about its middle (W3C, Web Application
 * Manifest, icon masks and safe zone); with 0.6 the mark's furthest point is at 0.36.
 */
export const MANIFEST_ICONS: readonly Icon[] = [
  { file: 'icon-192.png', size: 192, mark: 0.72, corner: 0.2, purpose: 'any' },
  { file: 'icon-512.png', size: 512, mark: 0.72, corner: 0.2, purpose: 'any' },
  { file: 'icon-maskable-512.png', size: 512, mark: 0.6, corner: 0, purpose: 'maskable' },
];

/** On the home screen of phones that read no manifest; they round the corners themselves. */
export const TOUCH_ICON: Icon = { file: 'apple-touch-icon.png', size: 180, mark: 0.7, corner: 0 };

/** The icon as SVG, of the mark's own SVG of 32 by 32. */
export function iconSvg(markSvg: string, { size, mark, corner }: Icon): string {
  const inner = markSvg.replace(/^<svg[^>]*>|<\/svg>\s*$/g, '');
  const edge = 16 * (1 - mark);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}" viewBox="0 0 32 32"><rect width="32" height="32" rx="${32 * corner}" fill="${PAPER}"/><g transform="translate(${edge} ${edge}) scale(${mark})">${inner}</g></svg>`;
}
