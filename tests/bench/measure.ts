/** Clocks and tables of `npm run bench`. */
import { execFileSync } from 'node:child_process';

export const ROUNDS = 5;

export function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1]!;
}

/** Median processor seconds of a task in this thread; other work on the machine does not count. */
export function seconds(task: () => void, rounds = ROUNDS): number {
  return median(
    Array.from({ length: rounds }, () => {
      const start = process.cpuUsage();
      task();
      return process.cpuUsage(start).user / 1e6;
    }),
  );
}

/** Median seconds by the clock of a task that others work at. */
export async function wallSeconds(task: () => Promise<unknown>, rounds = ROUNDS): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    await task();
    times.push((performance.now() - start) / 1e3);
  }
  return median(times);
}

export const row = (...cells: (string | number)[]) => console.log(`| ${cells.join(' | ')} |`);

/** A table's head, after an empty line. */
export function heading(...cells: string[]): void {
  console.log();
  row(...cells);
  row(...cells.map(() => '---'));
}

/** Runs a program; what it wrote, or undefined where it is missing or fails. */
export function outputOf(program: string, given: readonly string[]): string | undefined {
  try {
    return execFileSync(program, given, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
  } catch {
    return undefined;
  }
}

/** A figure reached beside the one aimed at. */
export interface Goal {
  what: string;
  reached: number;
  /** At most, or at least where `more`. */
  goal: number;
  more?: boolean;
  unit: string;
}

export function printGoals(goals: readonly Goal[]): void {
  heading('what', 'reached', 'goal', 'met');
  for (const { what, reached, goal, more = false, unit } of goals) {
    const met = more ? reached >= goal : reached <= goal;
    row(
      what,
      `${reached.toFixed(2)} ${unit}`,
      `${more ? '>=' : '<='} ${goal} ${unit}`,
      met ? 'yes' : 'no',
    );
  }
}
