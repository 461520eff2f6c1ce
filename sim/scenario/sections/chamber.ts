/** Whether the valves of both kinds fit into the bore. */
import { quantityToText } from '../quantity.ts';
import type { Reading } from '../reading.ts';

/** Share of the bore's area that valve heads seldom exceed [-]; common practice, no source. */
const CROWDED = 0.75;

export function checkChamber(reading: Reading): void {
  const bore = reading.given('engine.bore');
  if (bore === undefined) return;
  const kinds = ['intake', 'exhaust'] as const;
  const areas = kinds.map((kind) => headArea(reading, kind, bore) ?? 0);
  if (areas.some((area) => area === 0)) return;
  const share = (areas[0]! + areas[1]!) / bore ** 2;
  const shown = `the valve heads take ${(100 * share).toFixed(0)} % of the bore's area`;
  if (share >= 1) {
    reading.problem(
      'intake.valves.headDiameter',
      `${shown}: they do not fit`,
      'check head diameters, numbers of valves and bore; give the diameter of one valve',
      'less than 100 % for intake and exhaust together',
    );
  } else if (share > CROWDED) {
    reading.warn('intake.valves.headDiameter', `${shown}; more than ${100 * CROWDED} % is rare`);
  }
}

/** Heads of one kind, in squared diameters [m^2]; undefined while unknown or reported here. */
function headArea(reading: Reading, kind: 'intake' | 'exhaust', bore: number) {
  const path = `${kind}.valves.headDiameter`;
  const head = reading.given(path);
  const count = reading.given(`${kind}.valves.count`);
  if (head === undefined || count === undefined) return undefined;
  if (head < bore) return count * head ** 2;
  reading.problem(
    path,
    'the valve is wider than the bore',
    'check units: give the diameter of one valve head',
    `less than ${quantityToText(bore, 'length')}`,
  );
  return undefined;
}
