/** How a command ends. Scripts rely on these numbers. */
export const EXIT = {
  done: 0,
  /** The computation failed, or a point did not settle. */
  failed: 1,
  /** The file or the command is wrong. */
  inputWrong: 2,
} as const;

/** A signal has ended the computation: 128 plus its number, as shells count. */
export class Interrupted extends Error {
  override readonly name = 'Interrupted';
  readonly exitCode: number;

  constructor(exitCode: number) {
    super('stopped before the end; no result was written (a sweep goes on with --resume)');
    this.exitCode = exitCode;
  }
}
