/** What the air of an even idle can come through. */
import { IDLE_CAUTIONS, idleFigures, idleSentences, idleTables } from '../../sim/index.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { DataTable } from '../parts/DataTable.tsx';
import { resultOf } from '../state/asked.ts';
import { hasIdle, idling } from '../state/sensing.ts';
import { askedView } from './asked.tsx';

export const idleView = askedView({
  id: 'idle',
  question: 'Through what should the air of the idle come?',
  width: 'wide',
  height: 360,
  study: idling,
  applies: hasIdle,
  reading:
    'How far the cylinder whose throttle, drilling or nipple is off ends above the others, over the air of the engine: warm, with the load, cold, cold with the load. All through one cylinder lies far off the top and stands in the table alone.',
  sentences: idleSentences,
  plot: idleFigures.evennessPlot,
  table: idleTables.waysTable,
  decimals: 2,
  ask: {
    label: 'Compare the ways',
    cost: () =>
      'The engine at idle some forty times, all cylinders and hoses together: half a minute of two cores.',
  },
  Below: () => (
    <>
      <States />
      <Before />
    </>
  ),
});

/** Every way, warm and cold, without the load and with it. */
function States() {
  const found = resultOf(idling);
  if (!found) return null;
  const tables = [idleTables.settingsTable(found), idleTables.evennessTable(found)];
  return (
    <div class="whole">
      {tables.map((table) => (
        <DataTable key={table.label} table={table} caption={table.label} />
      ))}
    </div>
  );
}

/** Before anything is changed, computed or not. */
function Before() {
  return (
    <details open={resultOf(idling) !== undefined}>
      <summary>Before you let more air in</summary>
      <Cautions items={IDLE_CAUTIONS} />
    </details>
  );
}
