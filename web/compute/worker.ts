/** Worker entry: computes one point, trace or sample at a time, and keeps nothing between them. */
import { doubtSample, runJob, tracePoint } from '../../sim/index.ts';
import type { Answer, Question } from './protocol.ts';

const scope = self as unknown as {
  onmessage: (event: MessageEvent<Question>) => void;
  postMessage(answer: Answer): void;
};

scope.onmessage = ({ data }) => scope.postMessage(answerTo(data));

function answerTo(question: Question): Answer {
  try {
    if (question.kind === 'doubt') {
      const { text, file, asked } = question;
      return { kind: 'doubt', sample: doubtSample(text, file, asked) };
    }
    const { engine, speed } = question.job;
    return question.kind === 'point'
      ? { kind: 'point', outcome: runJob(question.job) }
      : { kind: 'trace', trace: tracePoint(engine, speed) };
  } catch (error) {
    return { kind: 'error', message: error instanceof Error ? error.message : String(error) };
  }
}
