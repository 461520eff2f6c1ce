/** Exhausts drawn by chance: each pipe alone, so many into one, named groups, two joints, steps, collectors. */
import { chance, type Draw, deg, mm, oneOf, type Sizes, valves, whole } from './drawnEngine.ts';

export function drawnExhaust(u: Draw, size: Sizes): object {
  const { bore, pipe, wide } = size;
  return {
    valves: valves(u, bore * 0.33, deg(u(35, 75), 'BBDC'), deg(u(5, 38), 'ATDC')),
    port: { length: mm(u(40 / wide, 110 * wide)), diameter: mm(pipe) },
    primary: { length: mm(u(250 / wide, 1000 * wide)), diameter: mm(pipe * u(1, 1.1)) },
    ...joint(u, size),
    tail: { length: mm(u(300 / wide, 2000 * wide)), diameter: mm(pipe * u(1.1, 1.8)) },
    silencerLoss: u(0, 8 * wide).toFixed(2),
  };
}

function joint(u: Draw, { cylinders, pipe, wide }: Sizes): object {
  if (cylinders > 1 && chance(u, 0.2)) return { groups: groups(u, cylinders) };
  const joined = oneOf(
    u,
    [1, 2, 3, 4].filter((one) => cylinders % one === 0),
  );
  if (joined === 1) return {};
  const between = (share: number) => ({ diameter: mm(pipe * u(1.05, share)) });
  return {
    joined,
    ...(chance(u, 0.2) && { step: { length: mm(u(60, 400 * wide)), ...between(1.2) } }),
    ...(joined === 4 &&
      chance(u, 0.4) && { secondary: { length: mm(u(120, 600 * wide)), ...between(1.3) } }),
    ...(chance(u, 0.3) && {
      collector: {
        length: mm(u(60, 300)),
        ...{ diameterValveEnd: mm(pipe * u(1.3, 1.8)), diameterAirEnd: mm(pipe * u(1.1, 1.4)) },
      },
    }),
  };
}

/** Cylinders shared out by chance to one to three tails, whose numbers of cylinders differ. */
function groups(u: Draw, cylinders: number): string[] {
  const pipes: number[][] = Array.from({ length: whole(u, 1, 3) }, () => []);
  for (let number = 1; number <= cylinders; number++) oneOf(u, pipes).push(number);
  return pipes.filter((group) => group.length > 0).map((group) => group.join('-'));
}
