/** `npm run kernel`: builds sim/kernel/bytes.ts from sim/kernel/assembly. */
import { writeFileSync } from 'node:fs';
import { kernelFile } from './kernelBytes.ts';

writeFileSync('sim/kernel/bytes.ts', kernelFile());
