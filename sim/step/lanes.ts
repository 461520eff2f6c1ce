/**
 * The words a step is written in. Each point (an engine speed) is one lane: as TypeScript there is
 * one, as WebAssembly two (f64) or four (f32) run side by side and never mix.
 * In an index the constant terms cost nothing; what is left of it must not be negative.
 * `builtins.ts` exists once a target; `powers.ts` is written in these words itself.
 */
export * from './builtins.ts';
export * from './powers.ts';
