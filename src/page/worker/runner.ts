import { type EngineWorker, startEngine } from './client.ts';
import type { RunAnswer, RunOrder } from './protocol.ts';

/** The worker that runs, and the way to stop it while it does. */
export interface Runner {
  readonly worker: () => EngineWorker;
  run(order: RunOrder): Promise<RunAnswer>;
  /** Ends the worker, whatever it does; the run that is under way fails with this message. The next run has a new worker. */
  stop(message: string): void;
}

/** A worker that can be stopped: one that was lost never answers, and a long run answers late. */
export function newRunner(onTrouble: (message: string) => void): Runner {
  let worker = startEngine(onTrouble);
  let fail: (error: Error) => void = () => undefined;
  return {
    worker: () => worker,
    run(order) {
      return new Promise((resolve, reject) => {
        fail = reject;
        worker.engine.run(order).then(resolve, reject);
      });
    },
    stop(message) {
      worker.end();
      worker = startEngine(onTrouble);
      fail(new Error(message));
    },
  };
}
