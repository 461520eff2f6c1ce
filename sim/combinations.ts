/** Every choice of one index below each of the counts, as rows; the last index runs fastest. */
export function combinations(counts: readonly number[]): number[][] {
  return counts.reduce<number[][]>(
    (heads, count) =>
      heads.flatMap((head) => Array.from({ length: count }, (_, i) => [...head, i])),
    [[]],
  );
}
