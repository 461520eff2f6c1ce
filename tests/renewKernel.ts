/** `npm run kernel`: builds sim/kernel/bytes.ts from sim/kernel/assembly, the lanes from sim/step. */
import { writeFileSync } from 'node:fs';
import { KERNELS, kernelPath, kernelText } from './kernel/files.ts';
import { kernelFile } from './kernelBytes.ts';

writeFileSync('sim/kernel/bytes.ts', kernelFile());
for (const lanes of KERNELS) writeFileSync(kernelPath(lanes), await kernelText(lanes));
