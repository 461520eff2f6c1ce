/**
 * Tables as Parquet: the columns of the CSV under the same names, numbers as doubles, gaps as nulls. Rows go out
 * in groups, so that a big table is never whole in memory.
 */
import { ByteWriter, ParquetWriter, schemaFromColumnData } from 'hyparquet-writer';
import { type Filed, filedColumns, type LongTable, PROGRAM, piecesOf } from '../index.ts';

export function* parquetPieces(table: LongTable): Iterable<Uint8Array> {
  const types = typesOf(table);
  const names = filedColumns({ ...table, cells: [] }).map(({ key }) => key);
  const schema = schemaFromColumnData({
    columnData: names.map((name, i) => ({ name, data: [], type: types[i]! })),
  });
  const writer = new ByteWriter();
  const createdBy = `${PROGRAM.name} version ${PROGRAM.version}`;
  const file = new ParquetWriter({ writer, schema, createdBy });
  for (const piece of piecesOf(table)) {
    const columnData = filedColumns(piece).map(({ key: name, values }, i) => ({
      name,
      data: types[i] === 'STRING' ? values.map(textOrNull) : values,
    }));
    file.write({ columnData });
    yield taken(writer);
  }
  file.finish();
  yield taken(writer);
}

/** What the writer holds; it goes on counting from there. */
function taken(writer: ByteWriter): Uint8Array {
  const bytes = writer.getBytes().slice();
  writer.index = 0;
  return bytes;
}

const KINDS = { number: 'DOUBLE', boolean: 'BOOLEAN' } as const;

type Type = (typeof KINDS)[keyof typeof KINDS] | 'STRING';

/** What every cell of a column can be written as. */
function typesOf(table: LongTable): Type[] {
  const seen: Set<string>[] = [];
  for (const piece of piecesOf(table)) {
    filedColumns(piece).forEach(({ values }, i) => {
      seen[i] ??= new Set();
      for (const value of values) if (value !== null) seen[i].add(typeof value);
    });
  }
  return seen.map((kinds): Type => {
    const [kind] = kinds;
    return kinds.size === 1 && (kind === 'number' || kind === 'boolean') ? KINDS[kind] : 'STRING';
  });
}

const textOrNull = (value: Filed) => (value === null ? null : String(value));
