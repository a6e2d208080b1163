import { useCallback, useEffect, useRef } from 'preact/hooks';

/** Gives a function that has `paint` called at the next picture of the display, once however often it was asked for. */
export function useFrameRequest(paint: () => void): () => void {
  const latest = useRef(paint);
  latest.current = paint;
  const pending = useRef<number | null>(null);
  useEffect(
    () => () => {
      if (pending.current !== null) cancelAnimationFrame(pending.current);
      pending.current = null;
    },
    [],
  );
  return useCallback(() => {
    pending.current ??= requestAnimationFrame(() => {
      pending.current = null;
      latest.current();
    });
  }, []);
}
