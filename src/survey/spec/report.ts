import type { Path } from '../../scenario/place.ts';
import type { Fault } from '../../scenario/problem.ts';

/** Takes down a fault at a path of the survey's data. */
export type Report = (path: Path, fault: Fault) => void;
