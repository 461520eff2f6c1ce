/** A view of readings that the reader opens: their study's sentences, one plot, one table. */
import type { Plot, Table } from '../../sim/index.ts';
import { drawn } from '../drawing/draw.ts';
import type { View } from '../drawing/view.ts';
import { Cautions } from '../parts/Cautions.tsx';
import { FileChoice, FileIssues } from '../parts/FileChoice.tsx';
import { Sentences } from '../parts/Sentences.tsx';
import type { Readings } from '../state/readings.ts';

interface OfReadings<T> extends Pick<View, 'id' | 'question'> {
  readings: Readings<T>;
  reading: string;
  plot(result: T): Plot;
  table(result: T): Table;
  sentences(result: T): readonly string[];
  cautions: readonly string[];
}

export function readingsView<T>(own: OfReadings<T>): View {
  const { id, question, readings, reading, plot, table, sentences, cautions } = own;
  const result = () => readings.state.value?.result;
  return {
    id,
    question,
    width: 'wide',
    height: 420,
    applies: ({ scenario }) => scenario.engine.cylinder.count > 1,
    asked: true,
    reading: () => reading,
    summary: () => sentences(result()!)[0]!,
    ready: () => result() !== undefined,
    figure: (_, look) => drawn(plot(result()!), look),
    table: () => table(result()!),
    watch: () => [readings.state.value],
    Above: () => {
      const opened = readings.state.value;
      return (
        <>
          <div class="choice">
            <FileChoice label="Open readings (CSV)" onText={readings.open} />
            {opened && <span class="quiet">{opened.file}</span>}
          </div>
          {opened && <FileIssues what="The file" issues={opened.issues} />}
          {opened?.problem && <p role="status">{opened.problem}</p>}
          {opened?.result && <Sentences sentences={sentences(opened.result)} />}
        </>
      );
    },
    Below: () => <Cautions items={cautions} />,
  };
}
