/**
 * What a worker thread does: one task at a time, mostly speeds of one engine. It loads the solver only,
 * not the reader of scenarios, so that it starts at once.
 */
import { TASKS, type TaskInput, type TaskName, type TaskOutput } from '../sweep/tasks.ts';

export default function task<Name extends TaskName>({
  name,
  input,
}: {
  name: Name;
  input: TaskInput<Name>;
}): TaskOutput<Name> {
  return (TASKS[name] as (input: TaskInput<Name>) => TaskOutput<Name>)(input);
}
