/** Tables as Parquet: the columns of the CSV under the same names, numbers as doubles, gaps as nulls. */
import { parquetWriteBuffer } from 'hyparquet-writer';
import { filedColumns, PROGRAM, type Table } from '../index.ts';

export function asParquet(table: Table): Uint8Array {
  const columnData = filedColumns(table).map(({ key: name, values }) => ({
    name,
    ...typed(values),
  }));
  const createdBy = `${PROGRAM.name} version ${PROGRAM.version}`;
  return new Uint8Array(parquetWriteBuffer({ columnData, createdBy }));
}

type Cells = ReturnType<typeof filedColumns>[number]['values'];

function typed(data: Cells) {
  const known = data.filter((value) => value !== null);
  const all = (kind: string) => known.length > 0 && known.every((value) => typeof value === kind);
  if (all('number')) return { data, type: 'DOUBLE' as const };
  if (all('boolean')) return { data, type: 'BOOLEAN' as const };
  return { data: data.map((value) => value ?? null).map(textOrNull), type: 'STRING' as const };
}

const textOrNull = (value: Cells[number]) => (value === null ? null : String(value));
