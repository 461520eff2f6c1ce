/** The common figures as a form; each change goes into the scenario's text. */
import { useMemo } from 'preact/hooks';
import { FIGURE_GROUPS, type FigureField, type ScenarioIssue } from '../../sim/index.ts';
import { figuresOf, withFigure } from '../state/figures.ts';
import { edit, reading, source } from '../state/scenario.ts';
import { useFollowing } from './following.ts';

export function EngineForm() {
  const { text } = source.value;
  const figureAt = useMemo(() => figuresOf(text), [text]);
  const now = reading.value;
  const issues = now.ok ? [] : now.issues;
  return (
    <form class="figures" onSubmit={(event) => event.preventDefault()}>
      {FIGURE_GROUPS.map(({ title, fields }) => (
        <fieldset key={title}>
          <legend>{title}</legend>
          {fields.map((field) => {
            const figure = figureAt(field.path);
            if (figure === undefined) return null;
            return <Figure key={field.path} field={field} figure={figure} issues={issues} />;
          })}
        </fieldset>
      ))}
    </form>
  );
}

interface FigureProps {
  field: FigureField;
  figure: string;
  issues: readonly ScenarioIssue[];
}

function Figure({ field: { path, label }, figure, issues }: FigureProps) {
  const field = useFollowing(figure);
  const issue = issues.find((one) => one.path === path);
  const id = `figure-${path}`;
  return (
    <div class={issue ? 'figure wrong' : 'figure'}>
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        ref={field}
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
          {issue.message}: {issue.remedy}
        </p>
      )}
    </div>
  );
}
