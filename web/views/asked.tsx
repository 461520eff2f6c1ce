/** A view of a study that is worked out when the reader asks: its sentences, one plot, one table. */
import type { ComponentType } from 'preact';
import type { LengthUnit, Plot, Table } from '../../sim/index.ts';
import { drawn } from '../drawing/draw.ts';
import type { View } from '../drawing/view.ts';
import { AskControl } from '../parts/AskControl.tsx';
import { Sentences } from '../parts/Sentences.tsx';
import { type AskedStudy, resultOf } from '../state/asked.ts';
import { type Picture, picture } from '../state/picture.ts';

interface Asked<T>
  extends Pick<View, 'id' | 'question' | 'width' | 'height' | 'applies' | 'Below'> {
  study: AskedStudy<T>;
  reading: string;
  plot(result: T, picture: Picture): Plot;
  table(result: T): Table;
  /** What the study says, the answer first; none where another view says it. */
  sentences?(result: T, unit: LengthUnit): readonly string[];
  /** What the button does and how long that takes; none where another view begins the study. */
  ask?: { label: string; cost(picture: Picture): string; ready?(picture: Picture): boolean };
  /** What the reader chooses of the question. */
  Choice?: ComponentType;
  /** Decimals under the pointer. */
  decimals?: number;
}

export function askedView<T>(asked: Asked<T>): View {
  const { study, reading, plot, table, sentences, ask, decimals, Choice, ...rest } = asked;
  const result = () => resultOf(study);
  return {
    ...rest,
    asked: true,
    reading: () => reading,
    summary: (now) =>
      sentences?.(result()!, now.scenario.lengthUnit)[0] ?? plot(result()!, now).description,
    ready: () => result() !== undefined,
    plain: (now) => plot(result()!, now),
    figure: (now, look) => drawn(plot(result()!, now), look, decimals),
    table: () => table(result()!),
    watch: () => [study.state.value],
    ...(ask && {
      Above: () => {
        const found = result();
        const now = picture.value;
        if (!now) return null;
        const { lengthUnit } = now.scenario;
        const ready = ask.ready?.(now) ?? true;
        return (
          <>
            {Choice && <Choice />}
            {found ? (
              <Sentences sentences={sentences?.(found, lengthUnit) ?? []} />
            ) : (
              <AskControl study={study} label={ask.label} cost={ask.cost(now)} ready={ready} />
            )}
          </>
        );
      },
    }),
  };
}
