/**
 * A rigid wall across a duct: no flow, the pressure of the arriving gas brought to rest.
 * Source: as outgoingWave.ts.
 */
import type { End } from './ductEnd.ts';
import { shut } from './exchange.ts';
import type { Node } from './node.ts';

export function closedEnd(end: End): Node {
  return { ends: [end], exchange: () => shut(end) };
}
