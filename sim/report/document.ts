/**
 * What every JSON document carries, and how numbers are written: rounded to ten significant digits,
 * well below any physical meaning and well above round-off, with the unit in every key.
 */
import { PROGRAM } from '../version.ts';

export interface DocumentHead {
  /** Name and version of the document's form. */
  schema: { name: string; version: number };
  program: { name: string; version: string };
  scenario: { title: string; hash: string };
}

/** What a document says of the scenario behind it. */
export interface ScenarioStamp {
  title: string;
  /** Hash of the resolved scenario. */
  hash: string;
}

export function documentHead(name: string, version: number, scenario: ScenarioStamp): DocumentHead {
  return { schema: { name: `trumpetry-${name}`, version }, program: { ...PROGRAM }, scenario };
}

const DIGITS = 10;

/** A number as documents write it; null where there is none. */
export function plain(value: number): number | null {
  return Number.isFinite(value) ? Number(value.toPrecision(DIGITS)) : null;
}
