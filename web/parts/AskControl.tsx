/** Begins a long study, shows how far it has come, stops it and goes on. */
import { type AskedStudy, mayAsk } from '../state/asked.ts';

interface AskProps {
  // biome-ignore lint/suspicious/noExplicitAny: what the study gives does not matter here
  study: AskedStudy<any>;
  /** What the button does, as a verb. */
  label: string;
  /** How long it takes, in words. */
  cost: string;
  /** Whether it can be begun at all. */
  ready?: boolean;
}

export function AskControl({ study, label, cost, ready = true }: AskProps) {
  const state = study.state.value;
  if (state.stage === 'done') return null;
  if (state.stage === 'running') return <Running study={study} label={label} />;
  return (
    <p class="progress">
      <button type="button" disabled={!ready || !mayAsk()} onClick={study.start}>
        {state.stage === 'stopped' ? 'Go on' : state.stage === 'failed' ? 'Try again' : label}
        {state.stage !== 'idle' && <span class="sr">: {label}</span>}
      </button>
      <span role="status">
        {state.stage === 'failed' && `It could not be worked out: ${state.message}`}
        {state.stage === 'stopped' && 'Stopped. Points computed so far are kept.'}
        {state.stage === 'idle' && cost}
      </span>
    </p>
  );
}

function Running({ study, label }: Pick<AskProps, 'study' | 'label'>) {
  const { done, total, began } = study.progress.value;
  return (
    <div class="progress">
      <span>
        {total === 0 ? 'Making ready…' : `${done} of ${total} points${left(done, total, began)}`}
      </span>
      <progress aria-label={label} max={Math.max(total, 1)} value={done} />
      <button type="button" onClick={study.stop}>
        Stop<span class="sr">: {label}</span>
      </button>
    </div>
  );
}

/** Seconds of work before a guess at the rest is worth saying. */
const WARM = 5;

function left(done: number, total: number, began: number): string {
  const spent = (performance.now() - began) / 1e3;
  if (spent < WARM || done === 0 || done === total) return '';
  const rest = (spent / done) * (total - done);
  return rest < 60 ? ', less than a minute left' : `, about ${Math.ceil(rest / 60)} min left`;
}
