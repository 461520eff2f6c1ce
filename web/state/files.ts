/** Names for files that the reader saves. */
import { source } from './scenario.ts';

/** The scenario's file name without ending. */
export function fileStem(): string {
  return source.value.file.replace(/\.ya?ml$/i, '').replace(/[^\w-]+/g, '-') || 'scenario';
}

/** Name of the file of a view's numbers. */
export const numbersName = ({ id }: { id: string }) => `${fileStem()}-${id}.csv`;
