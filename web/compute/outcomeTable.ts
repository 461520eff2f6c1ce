/** Every point computed so far for one scenario, by length and speed, however it came about. */
import {
  isFailure,
  type PointOutcome,
  type PointResult,
  type PointRunner,
} from '../../sim/index.ts';

/** Points of one speed that did not fail: their lengths [m], and what came of them. */
export interface Column {
  lengths: number[];
  results: PointResult[];
}

export class OutcomeTable {
  private readonly rows = new Map<number, Map<number, PointOutcome>>();
  private readonly columns = new Map<number, Column>();

  /** Lengths with at least one point [m], rising. */
  get lengths(): number[] {
    return [...this.rows.keys()].sort((a, b) => a - b);
  }

  at(length: number, speed: number): PointOutcome | undefined {
    return this.rows.get(length)?.get(speed);
  }

  put(length: number, outcome: PointOutcome): void {
    const row = this.rows.get(length) ?? new Map<number, PointOutcome>();
    this.rows.set(length, row.set(outcome.speed, outcome));
    this.columns.delete(outcome.speed);
  }

  /** What is known at a speed, lengths rising; gathered once until a point of that speed comes. */
  column(speed: number): Column {
    const column = this.columns.get(speed) ?? this.gathered(speed);
    this.columns.set(speed, column);
    return column;
  }

  private gathered(speed: number): Column {
    const column: Column = { lengths: [], results: [] };
    for (const length of this.lengths) {
      const outcome = this.at(length, speed);
      if (!outcome || isFailure(outcome)) continue;
      column.lengths.push(length);
      column.results.push(outcome);
    }
    return column;
  }

  /** Volumetric efficiency [-]; undefined where it is not known. */
  efficiency(length: number, speed: number): number | undefined {
    const outcome = this.at(length, speed);
    return outcome && !isFailure(outcome) ? outcome.volumetricEfficiency : undefined;
  }

  /** A runner that looks here first and notes what it had to compute. */
  recording(runner: PointRunner, onPoint: () => void): PointRunner {
    return {
      run: async (job) => {
        const { length } = job.engine.intake.trumpet;
        const known = this.at(length, job.speed);
        if (known) return known;
        const outcome = await runner.run(job);
        this.put(length, outcome);
        onPoint();
        return outcome;
      },
    };
  }
}
