/** Texts of stores as lines. */

export const linesOf = (text: string): string[] => text.split('\n');

/** How many characters of a text are whole lines; what follows was torn. */
export const wholeLines = (text: string): number => text.lastIndexOf('\n') + 1;
