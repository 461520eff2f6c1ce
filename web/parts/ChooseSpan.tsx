/** The ends of each axis of parallel coordinates as a pair of choices, so that the keyboard draws them too. */
import { type Axis, isChosen } from '../drawing/parallel.ts';
import { chooseSpan, spans } from '../state/spans.ts';

export function ChooseSpan({ axes }: { axes: readonly Axis[] }) {
  const rows = axes[0]?.places.length ?? 0;
  const chosen = Array.from({ length: rows }, (_, row) => isChosen(axes, spans.value, row));
  return (
    <>
      <details>
        <summary>Keep only variants within…</summary>
        {axes.map((axis, k) => (
          <Ends key={axis.label} axis={axis} at={k} />
        ))}
      </details>
      <p role="status">
        {chosen.filter(Boolean).length} of {rows} variants lie within.
      </p>
    </>
  );
}

function Ends({ axis, at }: { axis: Axis; at: number }) {
  const [low, high] = spans.value.get(at) ?? [0, 1];
  const stops = stopsOf(axis);
  const choice = (name: string, value: number, take: (place: number) => void) => (
    <label>
      {name}{' '}
      <select
        value={String(nearest(stops, value))}
        onChange={(event) => take(Number(event.currentTarget.value))}
      >
        {stops.map(({ place, text }) => (
          <option key={place} value={String(place)}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
  return (
    <fieldset class="choice">
      <legend>{axis.label}</legend>
      {choice('from', low, (place) => chooseSpan(at, place, Math.max(place, high)))}
      {choice('to', high, (place) => chooseSpan(at, Math.min(low, place), place))}
    </fieldset>
  );
}

/** What rows have on an axis, rising, each once. */
function stopsOf({ places, texts }: Axis): { place: number; text: string }[] {
  const known = new Map(places.map((place, row) => [place, texts[row]!]));
  return [...known].map(([place, text]) => ({ place, text })).sort((a, b) => a.place - b.place);
}

const nearest = (stops: readonly { place: number }[], value: number) =>
  stops.reduce(
    (best, { place }) => (Math.abs(place - value) < Math.abs(best - value) ? place : best),
    stops[0]?.place ?? 0,
  );
