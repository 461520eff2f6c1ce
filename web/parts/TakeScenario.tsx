/** Ways to keep the scenario and to pass it on. */
import { signal } from '@preact/signals';
import { saveText } from '../save.ts';
import { source } from '../state/scenario.ts';
import { linkTo } from '../state/share.ts';

const linkSays = signal('');
const link = signal('');

export function TakeScenario() {
  return (
    <>
      <p class="take">
        <button
          type="button"
          onClick={() => saveText(source.peek().file, source.peek().text, 'text/yaml')}
        >
          Save scenario (YAML)
        </button>
        <button type="button" onClick={() => void copyLink()}>
          Copy a link to this scenario
        </button>
        <span role="status">{linkSays.value}</span>
      </p>
      {link.value && (
        <p class="link-box">
          <label>
            The link{' '}
            <input
              type="text"
              readOnly
              value={link.value}
              onFocus={(e) => e.currentTarget.select()}
            />
          </label>
        </p>
      )}
    </>
  );
}

/** Makes a link of the scenario as it is now; the clipboard is a convenience that may be refused. */
async function copyLink(): Promise<void> {
  link.value = await linkTo(source.peek());
  try {
    await navigator.clipboard.writeText(link.value);
    linkSays.value = 'Copied. The whole scenario is in the link itself.';
  } catch {
    linkSays.value = 'Copy it from the field.';
  }
}
