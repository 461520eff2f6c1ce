/** The compiled step as files of text, so that nothing need be built to run. */

import type { Lanes } from '../../sim/kernel/load.ts';
import { build, stepModules } from './build.ts';

export const KERNELS = ['f64x2', 'f32x4'] as const;

export const kernelPath = (lanes: Lanes) => `sim/kernel/${lanes}.ts`;

export async function kernelText(lanes: Lanes): Promise<string> {
  const bytes = Buffer.from(await build(stepModules(), lanes)).toString('base64');
  return `/** sim/step for ${lanes} lanes, built by \`npm run kernel\`; not to be edited. */\nexport const BYTES =\n  '${bytes}';\n`;
}
