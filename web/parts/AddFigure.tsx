/** Every key that the file does not hold, by section: what it says, what is assumed meanwhile, and a way to add it. */
import { useState } from 'preact/hooks';
import { stringify } from 'yaml';
import { type Offer, offersOf } from '../../sim/index.ts';
import { keyWords } from '../drawing/formRows.ts';
import { sketchOf } from '../sketches/index.ts';
import { withKey } from '../state/keys.ts';
import { edit, reading, source } from '../state/scenario.ts';
import { SketchOf } from './SketchOf.tsx';

export function AddFigure({ tree }: { tree: unknown }) {
  const sections = offersOf(tree);
  const [path, choose] = useState('');
  const chosen = sections.flatMap(({ offers }) => offers).find((one) => one.path === path);
  return (
    <fieldset>
      <legend>Add what the file does not say</legend>
      <div class="figure">
        <label for="add-key">Add</label>
        <select
          id="add-key"
          value={chosen ? path : ''}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          <option value="">choose…</option>
          {sections.map(({ name, offers }) => (
            <optgroup key={name} label={keyWords(name)}>
              {offers.map((one) => (
                <option key={one.path} value={one.path}>
                  {keyWords(one.path)}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </div>
      {chosen && <Adding key={path} offer={chosen} />}
    </fieldset>
  );
}

function Adding({ offer }: { offer: Offer }) {
  const { path, example, description, absent, doubt, limits } = offer;
  const figure = typeof example === 'string';
  const taken = takenAt(path) ?? offer.value;
  const [written, write] = useState(taken ?? '');
  const at = sketchOf(path);
  const add = () => edit(withKey(source.peek().text, path, figure ? written.trim() : example));
  return (
    <>
      {at && <SketchOf sketch={at.sketch} lines={[at.line]} lit={at.line} />}
      <p class="reading">
        {description} {absent} {taken && taken !== offer.value && `Taken now: ${taken}.`}{' '}
        {limits && `Limits: ${limits}.`} {doubt && `Likely to be off by ${doubt}.`}
      </p>
      {figure ? (
        <div class="figure">
          <label for="add-value">{keyWords(path)}</label>
          <input
            id="add-value"
            type="text"
            autocomplete="off"
            spellcheck={false}
            placeholder={String(example)}
            value={written}
            onInput={(event) => write(event.currentTarget.value)}
          />
        </div>
      ) : (
        <pre class="to-add">{stringify(example)}</pre>
      )}
      <p class="take">
        <button type="button" disabled={figure && written.trim() === ''} onClick={add}>
          Add {keyWords(path)}
        </button>
      </p>
    </>
  );
}

/** What is taken meanwhile for a key that the file leaves out. */
function takenAt(path: string): string | undefined {
  const now = reading.value;
  return now.ok ? now.scenario.defaultsUsed.find((one) => one.path === path)?.value : undefined;
}
