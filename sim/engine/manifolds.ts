/**
 * Which cylinders blow into which pipes, and which of them do alike. Nothing passes between exhausts that
 * end in the open apart. Where every cylinder of one sees the others fire as every other does, one of them
 * is solved and the others are its echoes (step/echo.ts); else all are. Exhausts that differ by when they
 * fire alone are solved once. No source: symmetry.
 */
import { behind, type Firing, firesEvenly, firings } from '../firings.ts';
import type { EngineSpecification, IntakeSpecification } from '../specification.ts';

/** The primaries that meet first, by pipe behind their joint; each alone where it ends in the tail. */
export type Manifold = readonly (readonly Firing[])[];

/** Exhausts that do alike. */
export interface Kind {
  manifold: Manifold;
  /** Whether one of its cylinders stands for all. */
  even: boolean;
  /** Numbers of all cylinders that do as the one with this number. */
  like: ReadonlyMap<number, readonly number[]>;
}

/** Every exhaust, the first cylinder's first; in each the one that fires first comes first. */
export function manifolds(spec: EngineSpecification): Manifold[] {
  const { joined, groups, secondary } = spec.exhaust;
  return grouped(firings(spec), joined, groups).map((members) =>
    secondary
      ? grouped(members, secondary.joined, secondary.groups)
      : members.map((member) => [member]),
  );
}

/** By the numbers given, else those that fire every so many of the order. */
function grouped(
  members: readonly Firing[],
  joined: number,
  groups: readonly (readonly number[])[] | undefined,
): Firing[][] {
  const count = members.length / joined;
  const found = new Map<number, Firing[]>();
  members.forEach((one, j) => {
    const at = groups ? groups.findIndex((numbers) => numbers.includes(one.number)) : j % count;
    found.set(at, [...(found.get(at) ?? []), one]);
  });
  return [...found.values()];
}

/** Exhausts by kind. */
export function kindsOf(spec: EngineSpecification): Kind[] {
  const { intake } = spec;
  const found: { manifold: Manifold; seen: string; like: Map<number, number[]> }[] = [];
  for (const manifold of manifolds(spec)) {
    const members = manifold.flat();
    const known = found
      .flatMap((kind) => members.map((origin) => ({ kind, origin })))
      .find(({ kind, origin }) => seenFrom(origin, manifold, intake) === kind.seen);
    if (known) {
      const base = known.kind.manifold.flat();
      const there = inOrder(base, base[0]!);
      inOrder(members, known.origin).forEach(({ number }, i) => {
        known.kind.like.get(there[i]!.number)!.push(number);
      });
    } else {
      const like = new Map(members.map(({ number }) => [number, [number]]));
      found.push({ manifold, seen: seenFrom(members[0]!, manifold, intake), like });
    }
  }
  return found.map(({ manifold, seen, like }) => {
    const members = manifold.flat();
    const even = members.every((origin) => seenFrom(origin, manifold, intake) === seen);
    const all = new Map([[members[0]!.number, [...like.values()].flat()]]);
    return { manifold, even, like: even ? all : like };
  });
}

/** Whether cylinders of the engine differ, by what they blow into or by whom they breathe beside. */
export function cylindersDiffer(spec: EngineSpecification): boolean {
  const lines = kindsOf(spec).flatMap(({ like }) => [...like]);
  const { chamber, bars } = spec.intake;
  const along =
    chamber !== undefined &&
    (chamber.row !== undefined || !firesEvenly(spec) || !banksAlike(spec, chamber.banks));
  return lines.length > 1 || along || bars !== undefined;
}

/** Whether cylinders of each chamber fire every so many of an order that is even. */
const banksAlike = ({ cylinder: { count } }: EngineSpecification, banks?: readonly number[]) =>
  !banks ||
  Array.from({ length: count }, (_, i) => banks[(i + 2) % count] === banks[i]).every(Boolean);

const inOrder = (members: readonly Firing[], origin: Firing) =>
  members.toSorted((a, b) => behind(a, origin) - behind(b, origin));

/** Digits after the point of an angle [deg] and a length [m] that tell two apart. */
const [ANGLE_DIGITS, LENGTH_DIGITS] = [6, 9];

/** An exhaust as one of its cylinders sees it: who fires when, in which pipe, behind which trumpet, plate and drilling. */
function seenFrom(
  origin: Firing,
  manifold: Manifold,
  { trumpetLengths, throttleAngles, bleedBores }: IntakeSpecification,
): string {
  const bundles = manifold.map((bundle) =>
    bundle
      .map((one) => {
        const own = (values?: readonly number[]) => values?.[one.place] ?? 0;
        const angles = [behind(one, origin), own(throttleAngles)];
        const lengths = [own(trumpetLengths), own(bleedBores)];
        return [
          ...angles.map((angle) => angle.toFixed(ANGLE_DIGITS)),
          ...lengths.map((length) => length.toFixed(LENGTH_DIGITS)),
        ].join(' ');
      })
      .toSorted()
      .join(', '),
  );
  return bundles.toSorted().join('; ');
}
