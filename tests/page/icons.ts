/** `node --import tsx tests/page/icons.ts`: draws the icons of `web/public` from its `mark.svg`, in Chromium. */
import { readFileSync } from 'node:fs';
import { iconSvg, MANIFEST_ICONS, TOUCH_ICON } from '../../web/build/icons.ts';
import { launched } from './chromium.ts';

const folder = `${import.meta.dirname}/../../web/public`;
const mark = readFileSync(`${folder}/mark.svg`, 'utf8');
const browser = await launched();
const page = await browser.newPage();
for (const icon of [...MANIFEST_ICONS, TOUCH_ICON]) {
  const { size, file } = icon;
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(
    `<style>body { margin: 0 } svg { display: block }</style>${iconSvg(mark, icon)}`,
  );
  await page.screenshot({ path: `${folder}/${file}`, omitBackground: true });
}
await browser.close();
