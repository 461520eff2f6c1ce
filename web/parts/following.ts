/** Fields that follow a value from outside but leave alone what is being typed. */
import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/**
 * For the `ref` of a field in place of its `value`: other parts of the page are drawn afresh while
 * points come in, and that must not take back what the reader is typing.
 */
export function useFollowing(value: string): RefObject<HTMLInputElement | null> {
  const field = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => {
    field.current!.value = value;
  }, [value]);
  return field;
}
