/** What is being computed, with a way to stop it and to go on. */
import { crashes } from '../state/pool.ts';
import { cancel, resume, type Stage, study } from '../state/study.ts';

const WORDS: Partial<Record<Stage, string>> = {
  preview: 'First look',
  full: 'All lengths and speeds',
};

export function Progress() {
  const now = study.value;
  return (
    <>
      {now && <StudyProgress />}
      {crashes.value.count > 0 && (
        <p class="notice" role="status">
          A background worker stopped ({crashes.value.message || 'no reason given'}). It was
          replaced and its point is computed again; nothing is lost.
        </p>
      )}
    </>
  );
}

function StudyProgress() {
  const { stage, progress, message } = study.value!;
  const { done, total } = progress;
  if (stage === 'done') return null;
  if (stage === 'cancelled' || stage === 'failed') {
    return (
      <p class="notice" role="status">
        {stage === 'cancelled'
          ? 'Stopped. What was computed so far is shown.'
          : `The computation failed: ${message}`}{' '}
        <button type="button" onClick={resume}>
          {stage === 'cancelled' ? 'Go on' : 'Try again'}
        </button>
      </p>
    );
  }
  return (
    <div class="progress">
      <label for="progress">
        {WORDS[stage]}: {done} of {total} points
      </label>
      <progress id="progress" max={Math.max(total, 1)} value={done} />
      <button type="button" onClick={cancel}>
        Stop
      </button>
    </div>
  );
}
