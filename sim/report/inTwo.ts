/** A name in one line, or in two of like length where it is longer than so many letters and has a space. */
export function inTwo(name: string, letters: number): string[] {
  const spaces = [...name.matchAll(/ /g)].map(({ index }) => index);
  if (name.length <= letters || spaces.length === 0) return [name];
  const off = (at: number) => Math.abs(2 * at - name.length);
  const middle = spaces.reduce((best, at) => (off(at) < off(best) ? at : best));
  return [name.slice(0, middle), name.slice(middle + 1)];
}
