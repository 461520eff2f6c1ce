/** An engine of the reader's own from a dozen figures and the band; the rest is assumed and says so. */
import { OWN_FIGURES } from '../../sim/index.ts';
import { begin, chooseLengths, lengths, troubles, write, written } from '../state/beginning.ts';
import { closeDrawer } from '../state/place.ts';
import { SketchedFields } from './SketchedFields.tsx';

export function BeginEngine() {
  const others = troubles.value.filter(({ path }) => OWN_FIGURES.every((one) => one.path !== path));
  const wrong = troubles.value.length;
  const submit = (event: Event) => {
    event.preventDefault();
    if (begin()) closeDrawer();
    else queueMicrotask(toFirstWrong);
  };
  return (
    <form class="figures" onSubmit={submit}>
      <p class="reading">
        Write what you know; another unit may follow a figure, and a doubt that: 86 mm +- 0.1 mm.
        Everything else is assumed by common practice with its doubt, is marked in the file, and can
        be measured later.
      </p>
      <div class="figure">
        <label for="begin-title">Name of the engine</label>
        <input
          id="begin-title"
          type="text"
          value={written.value.title ?? ''}
          onInput={(event) => write('title', event.currentTarget.value)}
        />
      </div>
      <LengthUnits />
      <SketchedFields fields={OWN_FIGURES} field={(one) => <Known key={one.path} {...one} />} />
      <p role="status" class={wrong > 0 ? 'wrong-says' : 'sr'}>
        {wrong > 0 && `${wrong} of the figures must be mended.`}
      </p>
      {others.map(({ path, message, remedy }) => (
        <p class="wrong-says" key={`${path} ${message}`}>
          {path} {message}: {remedy}
        </p>
      ))}
      <p class="take">
        <button type="submit" class="main">
          Find the length
        </button>
      </p>
    </form>
  );
}

function LengthUnits() {
  return (
    <fieldset class="choice">
      <legend>Lengths without a unit are in</legend>
      {(['mm', 'in'] as const).map((unit) => (
        <label key={unit}>
          <input
            type="radio"
            name="lengths"
            checked={lengths.value === unit}
            onChange={() => chooseLengths(unit)}
          />{' '}
          {unit}
        </label>
      ))}
    </fieldset>
  );
}

function toFirstWrong(): void {
  document.querySelector<HTMLInputElement>('.figures [aria-invalid="true"]')?.focus();
}

function Known({ path, label, unit }: (typeof OWN_FIGURES)[number]) {
  const trouble = troubles.value.find((one) => one.path === path);
  const id = `begin-${path}`;
  return (
    <div class={trouble ? 'figure wrong' : 'figure'}>
      <label for={id}>
        {label}
        {unit && <span class="quiet"> [{unit === 'mm' ? lengths.value : unit}]</span>}
      </label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        data-path={path}
        autocomplete="off"
        spellcheck={false}
        value={written.value[path] ?? ''}
        aria-invalid={trouble !== undefined}
        aria-describedby={trouble && `${id}-issue`}
        onInput={(event) => write(path, event.currentTarget.value)}
      />
      {trouble && (
        <p id={`${id}-issue`} class="wrong-says">
          {trouble.message}: {trouble.remedy}
        </p>
      )}
    </div>
  );
}
