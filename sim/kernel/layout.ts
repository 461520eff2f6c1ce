/** Where the arrays of a step lie in the memory of a module [bytes]; builtins.ts names them. */
export const AT = { N: 0x10000, K: 0x80000, X: 0x200000 } as const;
/** log2 of the bytes of all lanes of a real. */
export const BYTES_OF_LANES = 4;
