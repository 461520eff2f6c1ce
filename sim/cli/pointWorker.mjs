/**
 * Entry of a worker thread. On Node 20 tsx registers itself in the main thread only, so every worker
 * does it for itself before it loads TypeScript.
 */
import { register } from 'tsx/esm/api';

register();
export default (await import('./pointWorker.ts')).default;
