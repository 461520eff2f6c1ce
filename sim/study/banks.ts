/** What the banks of a V breathe from, in words. */
import type { LengthUnit } from '../decision/lengthUnit.ts';
import { firings } from '../firings.ts';
import type { AirboxSpecification, PlenumSpecification } from '../fittings.ts';
import { sizeIn } from '../report/figures.ts';
import * as q from '../report/quantities.ts';
import { type Column, column } from '../report/table.ts';
import type { EngineSpecification } from '../specification.ts';

type Chambers = Pick<PlenumSpecification | AirboxSpecification, 'banks' | 'cross'>;

/** What a table of sizes says besides where each bank has a chamber of its own; volumes are of both. */
export function bankColumns<C extends Chambers>({ banks, cross }: C): Column<C>[] {
  if (!banks) return [];
  const pipe: Column<C>[] = [
    column(q.boreOf('cross_bore_mm', 'cross pipe'), (one) => one.cross?.diameter),
    column(q.boreOf('cross_length_mm', 'its length'), (one) => one.cross?.length),
  ];
  return [column(q.ratio('chambers', 'chambers', 0), () => 2), ...(cross ? pipe : [])];
}

/** What bodies are weighed against. */
export const plenumName = ({ banks }: Chambers): string =>
  banks ? 'a throttle and a plenum a bank' : 'one throttle and a plenum';

/** Which cylinders breathe from which chamber; nothing where there is one. @param what `plenum`, `box` */
export function banksWords(
  what: string,
  { banks, cross }: Chambers,
  engine: EngineSpecification,
  unit: LengthUnit,
): string[] {
  if (!banks) return [];
  const [first, second] = [0, 1].map((bank) =>
    firings(engine)
      .filter((_, i) => banks[i] === bank)
      .map(({ number }) => number)
      .sort((a, b) => a - b)
      .join('-'),
  );
  const size = (length: number) => sizeIn(length, unit);
  const joined = cross
    ? `a pipe of ${size(cross.diameter)} by ${size(cross.length)} joins the two`
    : 'nothing joins the two';
  return [`Each bank has a ${what} of its own, of cylinders ${first} and of ${second}; ${joined}.`];
}
