/** How far a job is: a bar on a terminal, a line now and then elsewhere. */
import cliProgress from 'cli-progress';
import type { SweepObserver } from '../index.ts';
import type { Output } from './terminal.ts';

export interface Progress extends SweepObserver {
  stop(): void;
}

export const SILENT: Progress = { stop() {} };

/** Progress on a stream. A terminal that cannot go back in a line gets lines, as files do. */
export function progressOn(stream: Output): Progress {
  return stream.isTTY && process.env.TERM !== 'dumb' ? bar(stream) : lines(stream);
}

/** Between lines where there is no bar [ms]. */
const NOW_AND_THEN = 60_000;

/** Says now and then how far it is; a short job is over before the first line. */
function lines(stream: Output): Progress {
  let [done, total] = [0, 0];
  const beat = setInterval(() => {
    if (total > 0) stream.write(`${done} of ${total} points\n`);
  }, NOW_AND_THEN).unref();
  return {
    onTotal(points) {
      total += points;
    },
    onPoint() {
      done++;
    },
    stop() {
      clearInterval(beat);
    },
  };
}

/** Points over which the remaining time is reckoned. */
const ETA_POINTS = 30;

/** Longest bar, and room for the words after it [characters]. */
const LONGEST_BAR = 40;
const WORDS = 44;

function bar(stream: Output): Progress {
  const barsize = Math.max(0, Math.min(LONGEST_BAR, (stream.columns ?? 80) - WORDS));
  const drawn = new cliProgress.SingleBar(
    {
      format: (options, { progress, value, total, eta }) =>
        `${cliProgress.Format.BarFormat(progress, options)} ${value} of ${total} points`.trimStart() +
        (value > 0 ? `, ${cliProgress.Format.TimeFormat(eta, options, 1)} left` : ''),
      stream,
      barsize,
      etaBuffer: ETA_POINTS,
      clearOnComplete: true,
      hideCursor: true,
      gracefulExit: false,
    },
    cliProgress.Presets.rect,
  );
  let total = 0;
  return {
    onTotal(points) {
      if (total === 0) drawn.start(points, 0);
      else drawn.setTotal(total + points);
      total += points;
    },
    onPoint() {
      drawn.increment();
    },
    stop() {
      drawn.stop();
    },
  };
}
