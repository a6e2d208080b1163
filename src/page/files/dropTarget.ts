/** What becomes of a file over the page. */
export interface DropHandlers {
  /** A file is over the page, or no more. */
  readonly over: (is: boolean) => void;
  readonly drop: (file: File) => void;
}

/**
 * Takes files that are dropped anywhere on an element, and keeps the browser from leaving the page for them.
 *
 * @returns ends it
 */
export function acceptDrops(target: EventTarget, { over, drop }: DropHandlers): () => void {
  const end = new AbortController();
  const on = (name: string, listener: (event: DragEvent) => void) =>
    target.addEventListener(name, (event) => listener(event as DragEvent), { signal: end.signal });
  const isFile = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true;
  on('dragover', (event) => {
    if (!isFile(event)) return;
    event.preventDefault();
    over(true);
  });
  on('dragleave', (event) => {
    // Leaving an element within the page goes to another one; leaving the page goes to none.
    if (event.relatedTarget === null) over(false);
  });
  on('drop', (event) => {
    if (!isFile(event)) return;
    event.preventDefault();
    over(false);
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) drop(file);
  });
  return () => end.abort();
}
