/** Whether the valves of both kinds fit into the bore. */
import { square } from '../../elementary/powers.ts';
import { quantityToText } from '../quantity.ts';
import type { ScenarioView } from '../schema.ts';
import type { ValvesView } from './valve.ts';

/** Share of the bore's area that valve heads seldom exceed [-]; common practice, no source. */
const CROWDED = 0.75;

export function checkChamber({ engine, intake, exhaust }: ScenarioView): void {
  const bore = engine.bore.given;
  if (bore === undefined) return;
  const areas = [intake, exhaust].map(({ valves }) => headArea(valves, bore) ?? 0);
  if (areas.some((area) => area === 0)) return;
  const share = (areas[0]! + areas[1]!) / square(bore);
  const shown = `the valve heads take ${(100 * share).toFixed(0)} % of the bore's area`;
  const { headDiameter } = intake.valves;
  if (share >= 1) {
    headDiameter.problem(
      `${shown}: they do not fit`,
      'check head diameters, numbers of valves and bore; give the diameter of one valve',
      'less than 100 % for intake and exhaust together',
    );
  } else if (share > CROWDED) {
    headDiameter.warn(`${shown}; more than ${100 * CROWDED} % is rare`);
  }
}

/** Heads of one kind, in squared diameters [m^2]; undefined while unknown or reported here. */
function headArea({ headDiameter, count }: ValvesView, bore: number): number | undefined {
  const head = headDiameter.given;
  if (head === undefined || count.given === undefined) return undefined;
  if (head < bore) return count.given * square(head);
  headDiameter.problem(
    'the valve is wider than the bore',
    'check units: give the diameter of one valve head',
    `less than ${quantityToText(bore, 'length')}`,
  );
  return undefined;
}
