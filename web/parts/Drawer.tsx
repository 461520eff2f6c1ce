/** The engine on the page, beside whatever place is open: its figures, its file, the set-ups kept. */
import { useEffect, useRef } from 'preact/hooks';
import { closeDrawer, drawer, openDrawer, TABS, type Tab } from '../state/place.ts';
import { isDemo, source } from '../state/scenario.ts';
import { BeginEngine } from './BeginEngine.tsx';
import { Editor } from './Editor.tsx';
import { EngineForm } from './EngineForm.tsx';
import { KeptSetUps } from './KeptSetUps.tsx';
import { TakeScenario } from './TakeScenario.tsx';

const NAMES: Record<Tab, string> = {
  begin: 'Begin',
  figures: 'Figures',
  file: 'File',
  kept: 'Kept set-ups',
};

export function Drawer() {
  const tab = drawer.value;
  const title = useRef<HTMLHeadingElement>(null);
  const shown = tab !== undefined;
  useEffect(() => {
    if (!shown) return;
    const before = document.activeElement as HTMLElement | null;
    title.current?.focus();
    return () => before?.focus();
  }, [shown]);
  if (!tab) return null;
  return (
    <aside
      class="drawer"
      aria-labelledby="drawer-title"
      onKeyDown={(event) => {
        if (event.key === 'Escape') closeDrawer();
      }}
    >
      <div class="drawer-head">
        <h2 id="drawer-title" tabIndex={-1} ref={title}>
          Your engine
        </h2>
        <button type="button" onClick={closeDrawer}>
          Close
        </button>
      </div>
      <Tabs chosen={tab} />
      <div id="drawer-panel" role="tabpanel" aria-labelledby={`tab-${tab}`}>
        <Inside tab={tab} />
      </div>
    </aside>
  );
}

function Tabs({ chosen }: { chosen: Tab }) {
  return (
    <div class="tabs" role="tablist" aria-label="Your engine as">
      {TABS.map((name) => (
        <button
          key={name}
          type="button"
          role="tab"
          id={`tab-${name}`}
          aria-selected={name === chosen}
          aria-controls="drawer-panel"
          onClick={() => openDrawer(name)}
        >
          {NAMES[name]}
        </button>
      ))}
    </div>
  );
}

function Inside({ tab }: { tab: Tab }) {
  if (tab === 'kept') return <KeptSetUps />;
  if (tab === 'begin') return <BeginEngine />;
  return (
    <>
      {isDemo(source.value.text) && <OfDemo />}
      <p class="reading">
        Change a figure and the answer follows. Everything is computed in this browser; nothing is
        sent anywhere.
      </p>
      {tab === 'figures' ? <EngineForm /> : <Editor />}
      <TakeScenario />
    </>
  );
}

/** Figures of a demo, changed one by one, would leave the reader with a flow bench of no engine. */
function OfDemo() {
  return (
    <p class="notice">
      These are the figures of an invented demo.{' '}
      <button type="button" onClick={() => openDrawer('begin')}>
        Begin your own
      </button>
    </p>
  );
}
