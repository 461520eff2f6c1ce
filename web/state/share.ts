/**
 * A scenario as a link: its text, deflated, in the part of the address after `#`, which browsers do
 * not send to any server.
 */
import { signal } from '@preact/signals';
import { take as takeScenario } from './opening.ts';
import { addressOf, place } from './place.ts';
import { type Source, source } from './scenario.ts';

/** Longest scenario that a link may unfold to [bytes]; the reader's own limit is tighter. */
const LONGEST = 1 << 20;

const PREFIX = '#scenario=';

/** What went wrong with the link, in words; empty where nothing did. */
export const linkTrouble = signal('');

/** The address of this page with the present scenario in it. */
export async function linkTo({ file, text }: Source): Promise<string> {
  const bytes = new TextEncoder().encode(`${file}\n${text}`);
  const packed = await through(bytes, new CompressionStream('deflate-raw'));
  const address = new URL(location.href);
  address.hash = PREFIX + toBase64Url(packed);
  return address.href;
}

/** Opens the scenario of the present address, if it holds one. */
export async function openLink(): Promise<void> {
  window.addEventListener('hashchange', () => void take());
  await take();
}

async function take(): Promise<void> {
  const { hash } = location;
  if (!hash.startsWith(PREFIX)) return;
  // The scenario is on the page from here on and changes there; an address that held it would grow old.
  history.replaceState(null, '', addressOf(place.peek()));
  try {
    const packed = fromBase64Url(hash.slice(PREFIX.length));
    const bytes = await through(packed, new DecompressionStream('deflate-raw'));
    const whole = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    const cut = whole.indexOf('\n');
    takeScenario({ file: whole.slice(0, cut).slice(0, 100), text: whole.slice(cut + 1) });
    linkTrouble.value = '';
  } catch {
    linkTrouble.value = `The link holds no readable scenario; it may have been cut short. Shown instead: ${source.peek().file}.`;
  }
}

type Transform = CompressionStream | DecompressionStream;

async function through(
  bytes: Uint8Array<ArrayBuffer>,
  transform: Transform,
): Promise<Uint8Array<ArrayBuffer>> {
  const reader = new Blob([bytes]).stream().pipeThrough(transform).getReader();
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > LONGEST) throw new Error('too long');
    parts.push(value as Uint8Array<ArrayBuffer>);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

function toBase64Url(bytes: Uint8Array): string {
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

function fromBase64Url(text: string): Uint8Array<ArrayBuffer> {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (char) => char.charCodeAt(0));
}
