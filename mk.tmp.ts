import { writeFileSync } from 'node:fs';
import { kernelPath, kernelText } from './tests/kernel/files.ts';
writeFileSync(kernelPath('f64x2'), await kernelText('f64x2'));
