/** Markup with everything put into it escaped, unless it is markup already. */

export class Markup {
  readonly text: string;

  constructor(text: string) {
    this.text = text;
  }
}

/** Enough between tags and inside double quotes, which is where parts stand. */
const ESCAPED: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

type Part = Markup | string | number | readonly Part[];

/** Template tag: html`<p>${anything}</p>`. */
export function html(pieces: TemplateStringsArray, ...parts: Part[]): Markup {
  return new Markup(pieces.reduce((text, piece, i) => text + markupOf(parts[i - 1]!) + piece));
}

function markupOf(part: Part): string {
  if (part instanceof Markup) return part.text;
  if (typeof part === 'object') return part.map(markupOf).join('\n');
  return String(part).replace(/[&<>"]/g, (sign) => ESCAPED[sign]!);
}
