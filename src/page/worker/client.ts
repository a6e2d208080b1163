import { type Remote, wrap } from 'comlink';
import type { Engine } from './protocol.ts';

/** A worker with an engine in it, and the way to end it while it works. */
export interface EngineWorker {
  readonly engine: Remote<Engine>;
  end(): void;
}

/** Starts a worker. A script that cannot be loaded is told to `onTrouble`. */
export function startEngine(onTrouble: (message: string) => void): EngineWorker {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('error', (event) =>
    onTrouble(
      event.message === '' ? 'The part of the page that computes could not be loaded.' : event.message,
    ),
  );
  return { engine: wrap<Engine>(worker), end: () => worker.terminate() };
}
