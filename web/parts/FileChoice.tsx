/** Opens a CSV of the reader's own, and says what is wrong with one. */
import type { ScenarioIssue } from '../../sim/index.ts';

/** Longest file that is taken at all [bytes]; the readers of files say the rest. */
const LONGEST = 1 << 20;

interface FileChoiceProps {
  label: string;
  onText(file: string, text: string): void;
}

export function FileChoice({ label, onText }: FileChoiceProps) {
  const take = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    onText(file.name, file.size > LONGEST ? '' : await file.text());
    input.value = '';
  };
  return (
    <label class="file">
      <input
        type="file"
        accept=".csv,text/csv"
        onChange={(event) => void take(event.currentTarget)}
      />
      <span>{label}</span>
    </label>
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
