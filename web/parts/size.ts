/** The size of a box, followed as it changes. */
import { useLayoutEffect, useState } from 'preact/hooks';

/** Width and height inside [px]; nothing before it is measured. */
export function useSize(box: { current: Element | null }): readonly [number, number] | undefined {
  const [size, setSize] = useState<readonly [number, number]>();
  useLayoutEffect(() => {
    const measure = () => setSize([box.current!.clientWidth, box.current!.clientHeight]);
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(box.current!);
    return () => watcher.disconnect();
  }, []);
  return size;
}
