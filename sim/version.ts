/** The program's name and version, as documents state them; the same as in package.json. */
export const PROGRAM = { name: 'trumpetry', version: '0.1.0' } as const;
