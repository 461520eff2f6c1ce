/** The figures as a form, each section with its sketch; each change goes into the scenario's text. */
import { useMemo } from 'preact/hooks';
import { FIGURE_GROUPS, type ScenarioIssue } from '../../sim/index.ts';
import { type Asked, askedOf } from '../drawing/formRows.ts';
import { figuresOf, withFigure } from '../state/figures.ts';
import { edit, reading, source } from '../state/scenario.ts';
import { useFollowing } from './following.ts';
import { SketchedFields } from './SketchedFields.tsx';

export function EngineForm() {
  const { text } = source.value;
  const figures = useMemo(() => figuresOf(text), [text]);
  const now = reading.value;
  const issues = now.ok ? [] : now.issues;
  return (
    <form class="figures" onSubmit={(event) => event.preventDefault()}>
      {FIGURE_GROUPS.map(({ title, fields }) => (
        <fieldset key={title}>
          <legend>{title}</legend>
          <SketchedFields
            fields={askedOf(fields, figures)}
            field={(one) => <Figure key={one.path} asked={one} issues={issues} />}
          />
        </fieldset>
      ))}
    </form>
  );
}

interface FigureProps {
  asked: Asked;
  issues: readonly ScenarioIssue[];
}

function Figure({ asked: { path, label, figure }, issues }: FigureProps) {
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
        data-path={path}
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
