import type { Judgement } from '../survey/judgement.ts';
import type { ReportBackground } from './reportBackground.ts';

/** A judgement with what is known of its machine beside the scenario. */
export interface JudgedRun
  extends Pick<Judgement, 'result' | 'suitability' | 'alternatives' | 'extremes'>,
    /** Absent where a judgement was put together without looking at closing angles. */
    Partial<Pick<Judgement, 'instants' | 'worst'>>,
    ReportBackground {}
