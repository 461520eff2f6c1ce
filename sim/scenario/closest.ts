import { distance } from 'fastest-levenshtein';

/** Words that differ only in case, blanks, hyphens or underscores are the same word. */
const plain = (word: string) => word.toLowerCase().replace(/[\s_-]/g, '');

/** The known word nearest to what was written, or undefined where none is near. */
export function closest(word: string, known: readonly string[]): string | undefined {
  const ranked = known
    .map((candidate) => ({ candidate, edits: distance(plain(word), plain(candidate)) }))
    .sort((a, b) => a.edits - b.edits);
  const best = ranked[0];
  if (best === undefined) return undefined;
  const length = Math.max(word.length, best.candidate.length);
  const most = length <= 3 ? 1 : Math.max(2, Math.floor(length / 3));
  return best.edits <= most ? best.candidate : undefined;
}
