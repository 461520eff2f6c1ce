/** Fields of a form under their sketches, in which the line of the one with the focus is lit. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { bySketch } from '../drawing/formRows.ts';
import { sketchOf } from '../sketches/index.ts';
import { SketchOf } from './SketchOf.tsx';

interface SketchedFieldsProps<F> {
  fields: readonly F[];
  /** A field whose input names its key in `data-path`. */
  field(one: F): ComponentChildren;
}

export function SketchedFields<F extends { path: string }>(props: SketchedFieldsProps<F>) {
  const [focused, setFocused] = useState<string>();
  const at = focused === undefined ? undefined : sketchOf(focused);
  return (
    <div
      onFocusIn={({ target }) => setFocused((target as HTMLElement).dataset.path)}
      onFocusOut={() => setFocused(undefined)}
    >
      {bySketch(props.fields).map(({ sketch, fields }) => (
        <div class="sketched" key={fields[0]!.path}>
          {sketch && (
            <SketchOf
              sketch={sketch}
              lines={fields.flatMap(({ path }) => sketchOf(path)?.line ?? [])}
              lit={at?.sketch === sketch ? at?.line : undefined}
            />
          )}
          {fields.map(props.field)}
        </div>
      ))}
    </div>
  );
}
