/** Opens a CSV of the reader's own, and says what is wrong with one. */
import { useState } from 'preact/hooks';
import type { ScenarioIssue } from '../../sim/index.ts';
import { tooLarge } from '../state/opening.ts';

interface FileChoiceProps {
  label: string;
  onText(file: string, text: string): void;
}

export function FileChoice({ label, onText }: FileChoiceProps) {
  const [trouble, setTrouble] = useState('');
  const take = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    const reason = tooLarge(file);
    setTrouble(reason && `${file.name} was not read: ${reason}.`);
    if (!reason) onText(file.name, await file.text());
    input.value = '';
  };
  return (
    <>
      <label class="file">
        <input
          type="file"
          accept=".csv,text/csv"
          onChange={(event) => void take(event.currentTarget)}
        />
        <span>{label}</span>
      </label>
      <span role="status">{trouble}</span>
    </>
  );
}

/** @param what cannot be read, with its article */
export function FileIssues({ what, issues }: { what: string; issues: readonly ScenarioIssue[] }) {
  if (issues.length === 0) return null;
  return (
    <div class="issues" role="status">
      <p>{what} cannot be read:</p>
      <ul>
        {issues.map((issue) => (
          <li key={`${issue.line} ${issue.path} ${issue.message}`}>
            line {issue.line}: {issue.path && <code>{issue.path}</code>} {issue.message}
            {issue.limit && <> (limit: {issue.limit})</>}: {issue.remedy}
          </li>
        ))}
      </ul>
    </div>
  );
}
