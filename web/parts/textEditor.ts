/** CodeMirror as this page uses it; loaded when the editor comes near the screen. */
import { yaml } from '@codemirror/lang-yaml';
import { HighlightStyle, syntaxHighlighting } from '@codemirror/language';
import { type Diagnostic, lintGutter, setDiagnostics } from '@codemirror/lint';
import { EditorView, lineNumbers } from '@codemirror/view';
import { tags } from '@lezer/highlight';
import { minimalSetup } from 'codemirror';
import type { ScenarioIssue } from '../../sim/index.ts';

export interface TextEditor {
  /** Takes a text changed elsewhere; the cursor stays where it can. */
  show(text: string): void;
  /** Marks issues at their lines. */
  mark(issues: readonly ScenarioIssue[]): void;
  goTo(line: number): void;
  close(): void;
}

export function textEditor(
  parent: HTMLElement,
  text: string,
  onChange: (text: string) => void,
): TextEditor {
  const view = new EditorView({
    parent,
    doc: text,
    extensions: [
      minimalSetup,
      lineNumbers(),
      lintGutter(),
      yaml(),
      LOOK,
      syntaxHighlighting(COLOURS),
      EditorView.lineWrapping,
      EditorView.contentAttributes.of({ 'aria-label': 'Scenario text', tabindex: '0' }),
      EditorView.updateListener.of((update) => {
        const own = update.transactions.some((transaction) => transaction.isUserEvent('outside'));
        if (update.docChanged && !own) onChange(update.state.doc.toString());
      }),
    ],
  });
  return {
    show: (next) => replaceText(view, next),
    mark: (issues) => {
      view.dispatch(
        setDiagnostics(
          view.state,
          issues.map((issue) => diagnostic(view, issue)),
        ),
      );
    },
    goTo: (line) => {
      const at = view.state.doc.line(Math.min(line, view.state.doc.lines)).from;
      view.dispatch({
        selection: { anchor: at },
        effects: EditorView.scrollIntoView(at, { y: 'center' }),
      });
      view.focus();
    },
    close: () => view.destroy(),
  };
}

/** Replaces what differs only, so that the cursor and the undo history keep their sense. */
function replaceText(view: EditorView, next: string): void {
  const old = view.state.doc.toString();
  if (old === next) return;
  let from = 0;
  while (from < old.length && old[from] === next[from]) from++;
  let end = 0;
  const most = Math.min(old.length, next.length) - from;
  while (end < most && old[old.length - 1 - end] === next[next.length - 1 - end]) end++;
  view.dispatch({
    changes: { from, to: old.length - end, insert: next.slice(from, next.length - end) },
    userEvent: 'outside',
  });
}

function diagnostic(view: EditorView, issue: ScenarioIssue): Diagnostic {
  const { doc } = view.state;
  const line = doc.line(Math.min(Math.max(issue.line, 1), doc.lines));
  const from = Math.min(line.from + issue.column - 1, line.to);
  const limit = issue.limit ? ` (limit: ${issue.limit})` : '';
  const message = `${issue.path}: ${issue.message}${limit}: ${issue.remedy}`;
  return { from, to: line.to, severity: 'error', message };
}

const LOOK = EditorView.theme({
  '&': { color: 'var(--ink)', backgroundColor: 'var(--field)', fontSize: '0.9rem' },
  '.cm-scroller': { fontFamily: 'var(--mono)', lineHeight: '1.55', maxHeight: '32rem' },
  '.cm-content': { caretColor: 'var(--ink)' },
  '.cm-cursor': { borderLeftColor: 'var(--ink)' },
  '.cm-gutters': { backgroundColor: 'transparent', color: 'var(--quiet)', border: 'none' },
  '.cm-tooltip': {
    backgroundColor: 'var(--paper)',
    color: 'var(--ink)',
    border: '1px solid var(--edge)',
  },
});

const COLOURS = HighlightStyle.define([
  { tag: tags.comment, color: 'var(--quiet)' },
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], color: 'var(--best)' },
  { tag: [tags.string, tags.content], color: 'var(--ink)' },
]);
