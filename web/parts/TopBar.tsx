/** Whose engine is on the page, the way into its figures, how the page looks, and what went wrong. */
import { demos } from '../state/demos.ts';
import { keepTrouble } from '../state/device.ts';
import { mendRefused, openFile, refused, take } from '../state/opening.ts';
import { closeDrawer, drawer, openDrawer } from '../state/place.ts';
import { source } from '../state/scenario.ts';
import { linkTrouble } from '../state/share.ts';
import { chooseTheme, type Theme, theme } from '../state/theme.ts';

export function TopBar() {
  return (
    <header class="top">
      <p class="brand">
        <svg viewBox="0 0 32 32" aria-hidden="true">
          <path d="M3 5c4 0 6 5 12 6h14M3 27c4 0 6-5 12-6h14" />
        </svg>
        Trumpetry
      </p>
      <div class="top-row">
        <EngineChoice />
        <FileChoice />
        <button
          type="button"
          aria-expanded={drawer.value !== undefined}
          onClick={() => (drawer.value ? closeDrawer() : openDrawer('figures'))}
        >
          Your engine
        </button>
        <ThemeChoice />
      </div>
      <Troubles />
    </header>
  );
}

/** What went wrong, at the top where it is seen. */
function Troubles() {
  return (
    <div class="troubles" role="alert">
      {refused.value && <RefusedFile />}
      {linkTrouble.value && <p class="notice">{linkTrouble.value}</p>}
      {keepTrouble.value && <p class="notice">{keepTrouble.value}</p>}
    </div>
  );
}

/** Issues said at the top; the editor has all. */
const SHOWN = 3;

function RefusedFile() {
  const { file, reason, issues, text } = refused.value!;
  const mend = () => {
    mendRefused();
    openDrawer('file');
  };
  return (
    <div class="notice">
      <strong>{file} was not taken</strong>
      {reason && `: ${reason}`}. The page keeps {source.value.file}.
      <ul>
        {issues.slice(0, SHOWN).map(({ line, path, message, limit, remedy }) => (
          <li key={`${line} ${path} ${message}`}>
            line {line}: {path} {message}
            {limit && ` (limit: ${limit})`}: {remedy}
          </li>
        ))}
        {issues.length > SHOWN && <li>and {issues.length - SHOWN} more</li>}
      </ul>
      {text !== undefined && (
        <button type="button" onClick={mend}>
          Mend it here
        </button>
      )}{' '}
      <button
        type="button"
        onClick={() => {
          refused.value = undefined;
        }}
      >
        Leave it
      </button>
    </div>
  );
}

function EngineChoice() {
  const { file, text } = source.value;
  const shown = demos.find((demo) => demo.text === text);
  return (
    <label class="engine-choice">
      <span>Engine</span>
      <select
        value={shown?.file ?? ''}
        onChange={(event) => {
          const demo = demos.find((one) => one.file === event.currentTarget.value);
          if (demo) take(demo);
        }}
      >
        {!shown && <option value="">{file} (yours)</option>}
        {demos.map((demo) => (
          <option key={demo.file} value={demo.file}>
            {demoName(demo.file)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** `hill-climb.yaml` -> `Demo: hill climb`. */
function demoName(file: string): string {
  return `Demo: ${file.replace(/\.yaml$/, '').replaceAll('-', ' ')}`;
}

function FileChoice() {
  return (
    <label class="file">
      <input
        type="file"
        accept=".yaml,.yml,text/yaml"
        onChange={({ currentTarget: input }) => {
          const file = input.files?.[0];
          if (file) void openFile(file);
          input.value = '';
        }}
      />
      <span>Open a file</span>
    </label>
  );
}

function ThemeChoice() {
  return (
    <label class="theme">
      <span>Page</span>
      <select
        value={theme.value}
        onChange={(event) => chooseTheme(event.currentTarget.value as Theme)}
      >
        <option value="system">as the system</option>
        <option value="light">light</option>
        <option value="dark">dark</option>
      </select>
    </label>
  );
}
