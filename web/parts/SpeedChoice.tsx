/** The speed at which the wave is looked at. */
import { rpm } from '../format.ts';
import { study } from '../state/study.ts';
import { chooseSpeed, traceOf, whySpeed } from '../state/why.ts';

export function SpeedChoice() {
  const speeds = study.value?.scenario.speeds ?? [];
  const failed = (['now', 'best', 'hand'] as const).flatMap((role) => {
    const state = traceOf(role);
    return typeof state === 'object' && 'failure' in state ? [state.failure] : [];
  });
  return (
    <div class="choice">
      <label>
        At{' '}
        <select
          value={String(whySpeed.value)}
          onChange={(event) => chooseSpeed(Number(event.currentTarget.value))}
        >
          {speeds.map((speed) => (
            <option key={speed} value={String(speed)}>
              {rpm(speed)}
            </option>
          ))}
        </select>
      </label>
      <span class="quiet" role="status">
        {(['now', 'best', 'hand'] as const).some((role) => traceOf(role) === 'running') &&
          'tracing a cycle…'}
        {failed.length > 0 && `This cycle could not be traced: ${failed[0]}`}
      </span>
    </div>
  );
}
