/** A bar with the time that remains, on a terminal; silence elsewhere. */
import cliProgress from 'cli-progress';
import type { SweepObserver } from '../index.ts';
import type { Output } from './terminal.ts';

export interface Progress extends SweepObserver {
  stop(): void;
}

/** Progress on a stream, which stays untouched where it is no terminal. */
export function progressOn(stream: Output): Progress {
  return stream.isTTY ? bar(stream) : SILENT;
}

const SILENT: Progress = { stop() {} };

/** Points over which the remaining time is reckoned. */
const ETA_POINTS = 30;

function bar(stream: Output): Progress {
  const drawn = new cliProgress.SingleBar(
    {
      format: (options, { progress, value, total, eta }) =>
        `${cliProgress.Format.BarFormat(progress, options)} ${value} of ${total} points` +
        (value > 0 ? `, ${cliProgress.Format.TimeFormat(eta, options, 1)} left` : ''),
      stream,
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
