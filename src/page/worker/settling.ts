import type { Settled } from './protocol.ts';

/** Whom settling asks and tells. */
export interface SettlingEnds {
  ask(): Promise<Settled>;
  tell(settled: Settled): void;
}

/** The hand counts as resting after so long, ms. */
const REST = 50;
/** While it moves on and on, it is asked for all the same once in this time, ms. */
const PATIENCE = 3000;

/** Asks for verdict and full pictures of what is shown once the hand rests; returns what to call at each new run. */
export function settling({ ask, tell }: SettlingEnds): () => void {
  let resting: ReturnType<typeof setTimeout> | undefined;
  let patient: ReturnType<typeof setTimeout> | undefined;
  const go = () => {
    clearTimeout(resting);
    clearTimeout(patient);
    patient = undefined;
    // A worker that fails is told of where its runs are asked for; a verdict that does not come is shown as none.
    ask().then(tell, () => undefined);
  };
  return () => {
    clearTimeout(resting);
    resting = setTimeout(go, REST);
    patient ??= setTimeout(go, PATIENCE);
  };
}
