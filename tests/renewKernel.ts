import { writeFileSync } from 'node:fs';
import { KERNELS, kernelPath, kernelText } from './kernel/files.ts';

for (const lanes of KERNELS) writeFileSync(kernelPath(lanes), await kernelText(lanes));
