/** Worker entry: computes one point or one trace at a time, and keeps nothing between them. */
import { runJob, tracePoint } from '../../sim/index.ts';
import type { Answer, Question } from './protocol.ts';

const scope = self as unknown as {
  onmessage: (event: MessageEvent<Question>) => void;
  postMessage(answer: Answer): void;
};

scope.onmessage = ({ data }) => scope.postMessage(answerTo(data));

function answerTo(question: Question): Answer {
  try {
    const { engine, speed } = question.job;
    return question.kind === 'point'
      ? { kind: 'point', outcome: runJob(question.job) }
      : { kind: 'trace', trace: tracePoint(engine, speed) };
  } catch (error) {
    return { kind: 'error', message: error instanceof Error ? error.message : String(error) };
  }
}
