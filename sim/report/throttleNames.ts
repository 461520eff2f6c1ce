/** Reports are written of plates; of slides and barrels each word for them is changed, but no key of a file. */
import { throttleOf } from '../loss/throttles.ts';
import type { ThrottleSpecification } from '../specification.ts';

/** The same text or plain data with what throttles called by its name; what is of a class stays as it is. */
export function throttleNamed<T>(told: T, throttle: Pick<ThrottleSpecification, 'kind'>): T {
  const { noun } = throttleOf(throttle);
  return noun === 'plate' ? told : (renamed(told, noun) as T);
}

function renamed(told: unknown, noun: string): unknown {
  if (typeof told === 'string') return told.replace(/\b(p)late(s?)\b/gi, wordOf(noun));
  if (Array.isArray(told)) return told.map((one) => renamed(one, noun));
  if (told === null || typeof told !== 'object') return told;
  if (Object.getPrototypeOf(told) !== Object.prototype) return told;
  const entries = Object.entries(told);
  return Object.fromEntries(
    entries.map(([key, value]) => [key, FILED.has(key) ? value : renamed(value, noun)]),
  );
}

/** Names in files and addresses. */
const FILED = new Set(['id', 'key', 'list']);

const wordOf = (noun: string) => (_: string, first: string, plural: string) =>
  (first === 'P' ? noun[0]!.toUpperCase() + noun.slice(1) : noun) + plural;
