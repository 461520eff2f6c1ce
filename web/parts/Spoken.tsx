/** A live region for those who hear the page; it waits until its text rests, so that a drag says one thing. */
import { useEffect, useState } from 'preact/hooks';

/** Rest before a text is said [ms]. */
const REST = 900;

export function Spoken({ text }: { text: string }) {
  const [said, say] = useState('');
  useEffect(() => {
    const rest = setTimeout(() => say(text), REST);
    return () => clearTimeout(rest);
  }, [text]);
  return (
    <p class="sr" role="status">
      {said}
    </p>
  );
}
