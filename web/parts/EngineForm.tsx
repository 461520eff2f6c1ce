/** The common figures as a form; each change goes into the scenario's text. */
import type { ScenarioIssue } from '../../sim/index.ts';
import { FIGURE_GROUPS, type FigureField, figureAt, withFigure } from '../state/figures.ts';
import { edit, reading, source } from '../state/scenario.ts';

export function EngineForm() {
  const { text } = source.value;
  const now = reading.value;
  const issues = now.ok ? [] : now.issues;
  return (
    <form class="figures" onSubmit={(event) => event.preventDefault()}>
      {FIGURE_GROUPS.map(({ title, fields }) => (
        <fieldset key={title}>
          <legend>{title}</legend>
          {fields.map((field) => (
            <Figure key={field.path} field={field} text={text} issues={issues} />
          ))}
        </fieldset>
      ))}
    </form>
  );
}

interface FigureProps {
  field: FigureField;
  text: string;
  issues: readonly ScenarioIssue[];
}

function Figure({ field: { path, label }, text, issues }: FigureProps) {
  const figure = figureAt(text, path);
  if (figure === undefined) return null;
  const issue = issues.find((one) => one.path === path);
  const id = `figure-${path}`;
  return (
    <div class={issue ? 'figure wrong' : 'figure'}>
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        value={figure}
        autocomplete="off"
        spellcheck={false}
        aria-invalid={issue !== undefined}
        aria-describedby={issue && `${id}-issue`}
        onChange={(event) =>
          edit(withFigure(source.peek().text, path, event.currentTarget.value.trim()))
        }
      />
      {issue && (
        <p id={`${id}-issue`} class="wrong-says">
          {issue.message}. {issue.remedy}
        </p>
      )}
    </div>
  );
}
