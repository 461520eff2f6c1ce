/** The button that saves all of the page as one ZIP, and how far it has come. */
import { useState } from 'preact/hooks';
import type { Picture } from '../state/picture.ts';
import { zipAll } from './zipAll.ts';

export function SaveAll({ picture }: { picture: Picture }) {
  const [says, say] = useState('');
  const save = async () => {
    try {
      await zipAll(picture, (done, total) => say(`drawing ${done + 1} of ${total}…`));
      say('Saved: scenario, report, and every plot worked out so far.');
    } catch (error) {
      say(`Not saved: ${error instanceof Error ? error.message : String(error)}`);
    }
  };
  return (
    <>
      <button type="button" disabled={says.startsWith('drawing')} onClick={() => void save()}>
        Save all (ZIP)
      </button>{' '}
      <span role="status">{says}</span>
    </>
  );
}
