/** The scenario's text in an editor, with every error at its line and listed below. */
import { useEffect, useRef } from 'preact/hooks';
import type { ScenarioIssue } from '../../sim/index.ts';
import { edit, reading, source } from '../state/scenario.ts';
import type { TextEditor } from './textEditor.ts';

/** Rest after a keystroke before the text is read [ms]. */
const REST = 300;

export function Editor() {
  const box = useRef<HTMLDivElement>(null);
  const editor = useRef<TextEditor>(undefined);
  const { text } = source.value;
  const now = reading.value;
  const issues = now.ok ? NONE : now.issues;

  useEffect(() => {
    let live = true;
    let rest: ReturnType<typeof setTimeout> | undefined;
    void import('./textEditor.ts').then(({ textEditor }) => {
      if (!live) return;
      editor.current = textEditor(box.current!, source.peek().text, (changed) => {
        clearTimeout(rest);
        rest = setTimeout(() => edit(changed), REST);
      });
      const first = reading.peek();
      editor.current.mark(first.ok ? NONE : first.issues);
    });
    return () => {
      live = false;
      clearTimeout(rest);
      editor.current?.close();
    };
  }, []);

  useEffect(() => editor.current?.show(text), [text]);
  useEffect(() => editor.current?.mark(issues), [issues]);

  return (
    <div class="editor">
      <div ref={box} class="editor-box" />
      <div role="status">
        {issues.length > 0 && (
          <IssueList issues={issues} onGo={(line) => editor.current?.goTo(line)} />
        )}
      </div>
    </div>
  );
}

const NONE: readonly ScenarioIssue[] = [];

interface IssueListProps {
  issues: readonly ScenarioIssue[];
  onGo(line: number): void;
}

function IssueList({ issues, onGo }: IssueListProps) {
  return (
    <div class="issues">
      <p>
        {issues.length === 1 ? 'One thing is' : `${issues.length} things are`} wrong in the text.
        The plots show the last scenario that could be read.
      </p>
      <ul>
        {issues.map((issue) => (
          <li key={`${issue.line}:${issue.column}:${issue.path}`}>
            <button type="button" class="place" onClick={() => onGo(issue.line)}>
              line {issue.line}
            </button>{' '}
            <code>{issue.path}</code> {issue.message}
            {issue.limit && <> (limit: {issue.limit})</>}: {issue.remedy}
          </li>
        ))}
      </ul>
    </div>
  );
}
