/** Puts the page up and sets it going. */
import './style/page.css';
import { render } from 'preact';
import { Page } from './Page.tsx';
import { followScenario } from './state/follow.ts';
import { followAddress } from './state/place.ts';
import { keepPresent } from './state/scenario.ts';
import { openLink } from './state/share.ts';

declare global {
  interface Window {
    /** Set by unfit.js where the browser cannot run the page. */
    unfit?: boolean;
  }
}

if (!window.unfit) void begin();

/** Files are kept only then [ms]: to read and compile all of them takes a core a second, which the answer needs first. */
const KEEP_AFTER = 3000;

/** The built page keeps its own files, so that it opens without a network; some browsers forbid that. */
function keepForOffline(): void {
  if (!document.querySelector('link[rel=manifest]')) return;
  setTimeout(() => void navigator.serviceWorker?.register('./sw.js').catch(() => {}), KEEP_AFTER);
}

async function begin(): Promise<void> {
  followAddress();
  await openLink();
  keepPresent();
  const place = document.getElementById('page')!;
  place.replaceChildren();
  render(<Page />, place);
  followScenario();
  keepForOffline();
}
