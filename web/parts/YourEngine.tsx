/** The scenario: common figures, the whole text, and ways to keep and pass it on. */
import { signal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { saveText } from '../save.ts';
import { source } from '../state/scenario.ts';
import { linkTo } from '../state/share.ts';
import { Editor } from './Editor.tsx';
import { EngineForm } from './EngineForm.tsx';
import { useNear } from './near.ts';

const linkSays = signal('');

export function YourEngine() {
  const box = useRef<HTMLElement>(null);
  const near = useNear(box, 'once');
  return (
    <section class="your-engine" id="your-engine" aria-labelledby="your-engine-title" ref={box}>
      <h2 id="your-engine-title">Your engine</h2>
      <p class="reading">
        Change a figure and the answer follows. Everything is computed in this browser; nothing is
        sent anywhere.
      </p>
      <EngineForm />
      <h3>The whole scenario</h3>
      <p class="reading">
        One engine and one question as text. The form above writes into it and leaves your remarks
        alone.
      </p>
      {near ? <Editor /> : <div class="editor" />}
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
    </section>
  );
}

/** Puts the scenario into the address; the clipboard is a convenience that may be refused. */
async function copyLink(): Promise<void> {
  const link = await linkTo(source.peek());
  history.replaceState(null, '', link);
  try {
    await navigator.clipboard.writeText(link);
    linkSays.value = 'Copied. The whole scenario is in the link itself.';
  } catch {
    linkSays.value = 'The link is in the address bar; copy it from there.';
  }
}
