/** Worker entry: computes speeds of one engine, a trace, a task or a sample at a time, and keeps nothing between them. */
import {
  doubtSample,
  runSpeedsJob,
  runSpeedsQuickly,
  TASKS,
  type TaskName,
  type TaskOutput,
  tracePoint,
} from '../../sim/index.ts';
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
    if (question.kind === 'speeds') {
      const run = question.quick ? runSpeedsQuickly : runSpeedsJob;
      return { kind: 'speeds', outcomes: run(question.job) };
    }
    if (question.kind === 'task') {
      const task = TASKS[question.name] as (input: unknown) => TaskOutput<TaskName>;
      return { kind: 'task', output: task(question.input) };
    }
    const { engine, speed } = question.job;
    return { kind: 'trace', trace: tracePoint(engine, speed) };
  } catch (error) {
    return { kind: 'error', message: error instanceof Error ? error.message : String(error) };
  }
}
