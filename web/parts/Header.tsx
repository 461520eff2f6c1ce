/** Whose engine is on the page, and how the page looks. */
import { demos } from '../state/demos.ts';
import { open, source } from '../state/scenario.ts';
import { linkTrouble } from '../state/share.ts';
import { chooseTheme, type Theme, theme } from '../state/theme.ts';

/** Longest file that is taken at all [bytes]; the scenario reader says the rest. */
const LONGEST = 1 << 20;

export function Header() {
  return (
    <header class="top">
      <p class="brand">
        <svg viewBox="0 0 32 32" aria-hidden="true">
          <path d="M3 5c4 0 6 5 12 6h14M3 27c4 0 6-5 12-6h14" />
        </svg>
        Trumpetry
      </p>
      <nav class="top-row" aria-label="Engine and page">
        <DemoChoice />
        <FileChoice />
        <a href="#your-engine">Your engine</a>
        <ThemeChoice />
      </nav>
      {linkTrouble.value && (
        <p class="notice" role="alert">
          {linkTrouble.value}
        </p>
      )}
    </header>
  );
}

function DemoChoice() {
  const { file, text } = source.value;
  const shown = demos.find((demo) => demo.text === text);
  return (
    <label>
      <span>Engine</span>
      <select
        value={shown?.file ?? ''}
        onChange={(event) => {
          const demo = demos.find((one) => one.file === event.currentTarget.value);
          if (demo) open({ file: demo.file, text: demo.text });
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
  const take = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    const text = file.size > LONGEST ? '' : await file.text();
    open({ file: file.name, text });
    input.value = '';
  };
  return (
    <label class="file">
      <input
        type="file"
        accept=".yaml,.yml,text/yaml"
        onChange={(event) => void take(event.currentTarget)}
      />
      <span>Open a file</span>
    </label>
  );
}

function ThemeChoice() {
  return (
    <label>
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
