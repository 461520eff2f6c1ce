/** The set-ups kept on this device: named, drawn beside the others, opened again, saved as files. */
import { saveText } from '../save.ts';
import { forget, kept, pin, rename, type SetUp, textOf } from '../state/kept.ts';
import { take } from '../state/opening.ts';
import { lengthText } from '../state/unit.ts';

export function KeptSetUps() {
  const all = kept.value;
  return (
    <>
      <p class="reading">
        Kept in this browser on this device and nowhere else; save as files what must not be lost.
        “Keep” beside the length puts one here.
      </p>
      {all.length === 0 && <p>None is kept yet.</p>}
      <ul class="kept">
        {all.map((one) => (
          <Row key={one.id} setUp={one} />
        ))}
      </ul>
    </>
  );
}

function Row({ setUp }: { setUp: SetUp }) {
  const { id, name, file, length, pinned, points } = setUp;
  const of = <span class="sr">: {name}</span>;
  return (
    <li>
      <input
        type="text"
        aria-label="Name of the set-up"
        value={name}
        maxLength={60}
        onChange={(event) => rename(id, event.currentTarget.value.trim() || file)}
      />
      <span class="quiet">
        {file}
        {Number.isFinite(length) && `, ${lengthText(length)}`}
      </span>
      <span class="kept-row">
        <label>
          <input
            type="checkbox"
            checked={pinned}
            disabled={points.length === 0}
            onChange={(event) => pin(id, event.currentTarget.checked)}
          />{' '}
          draw its curve{of}
        </label>
        <button type="button" onClick={() => take({ file, text: textOf(setUp) })}>
          Open{of}
        </button>
        <button type="button" onClick={() => saveText(fileOf(setUp), textOf(setUp), 'text/yaml')}>
          Save as file{of}
        </button>
        <button type="button" onClick={() => forget(id)}>
          Remove{of}
        </button>
      </span>
    </li>
  );
}

const fileOf = ({ name }: SetUp) =>
  `${name.replace(/[^\w-]+/g, '-').toLowerCase() || 'set-up'}.yaml`;
