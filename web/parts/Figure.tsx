/** A figure of the form: what stands in the text, what is wrong with it, and a way to take it out. */
import { mayGo, type ScenarioIssue } from '../../sim/index.ts';
import type { Asked } from '../drawing/formRows.ts';
import { withFigure } from '../state/figures.ts';
import { withoutKey } from '../state/keys.ts';
import { edit, source } from '../state/scenario.ts';
import { useFollowing } from './following.ts';

interface FigureProps {
  asked: Asked;
  issues: readonly ScenarioIssue[];
}

export function Figure({ asked: { path, label, figure }, issues }: FigureProps) {
  const field = useFollowing(figure);
  const issue = issues.find((one) => one.path === path);
  const id = `figure-${path}`;
  return (
    <div class={issue ? 'figure wrong' : 'figure'}>
      <label for={id}>{label}</label>
      <span class="figure-box">
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
        {mayGo(path) && <Remove path={path} name={label} />}
      </span>
      {issue && (
        <p id={`${id}-issue`} class="wrong-says">
          {issue.message}: {issue.remedy}
        </p>
      )}
    </div>
  );
}

/** Takes a key out of the file; what is assumed without it is said where it can be added. */
export function Remove({ path, name }: { path: string; name: string }) {
  return (
    <button
      type="button"
      class="remove"
      title={`Take “${name}” out of the file`}
      onClick={() => edit(withoutKey(source.peek().text, path))}
    >
      <span aria-hidden="true">×</span>
      <span class="sr">Take out: {name}</span>
    </button>
  );
}
