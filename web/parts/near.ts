/** Whether an element has come near the screen. */
import { useEffect, useState } from 'preact/hooks';

/**
 * @param mode `once` stays true after the first time
 */
export function useNear(box: { current: Element | null }, mode: 'once' | 'always' = 'always') {
  const [near, setNear] = useState(false);
  useEffect(() => {
    const watcher = new IntersectionObserver(
      (entries) => {
        const inside = entries[entries.length - 1]!.isIntersecting;
        if (mode === 'always' || inside) setNear(inside);
        if (mode === 'once' && inside) watcher.disconnect();
      },
      { rootMargin: '60% 0%' },
    );
    watcher.observe(box.current!);
    return () => watcher.disconnect();
  }, []);
  return near;
}
