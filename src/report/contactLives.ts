import type { Suitability } from '../assess/suitability.ts';
import type { ContactorWear, ContactWear, CountRange } from '../assess/wear/contactWearTypes.ts';
import type { Alternative } from '../survey/alternatives/alternative.ts';
import { formatNumber } from './formatQuantity.ts';

/** A life that no data of the device support. */
export const GENERIC_CURVE = "generic curve, not this contactor's data";

/** A life of contacts with the two digits that are known of it at most; null is "—". */
export function lifeText(count: number | null): string {
  if (count === null) return '—';
  if (!Number.isFinite(count)) return 'no wear';
  return count < 100 ? String(Math.floor(count)) : formatNumber(Number(count.toPrecision(2)));
}

/** "64 000 … 320 000" */
export function lifeRangeText({ low, high }: Pick<CountRange, 'low' | 'high'>): string {
  return `${lifeText(low)} … ${lifeText(high)}`;
}

/** Two lives nearer to each other than this share of them are one and the same, found in two ways. */
const SAME_LIFE = 1e-3;

/** The range of a way's life of contacts: known of the scenario's own stop, where the duty is made of it; else null. */
export function lifeRangeOf({ name, cost }: Alternative, wear: ContactWear | null): CountRange | null {
  const { contactLife, wearsFirst } = cost;
  if (name !== 'plug' || contactLife === null || wearsFirst === null || wear === null) return null;
  const { operations } = wear[wearsFirst];
  if (operations === null) return null;
  return Math.abs(operations.value - contactLife) <= SAME_LIFE * contactLife ? operations : null;
}

/** The contactor whose contacts are to be replaced first; null: not known. */
export function governingContactor(wear: ContactWear | null): ContactorWear | null {
  return wear === null || wear.governing === null ? null : wear[wear.governing];
}

/** What to say where the life of the contacts decides the verdict and no data of the device support it; else nothing. */
export function genericLifeCautions({ verdict, criteria, wear }: Suitability): readonly string[] {
  const life = criteria.find(({ key }) => key === 'contactLife');
  const decides =
    verdict.decisive.includes('contactLife') && life !== undefined && life.outcome !== 'notJudged';
  return decides && governingContactor(wear)?.basis.generic === true
    ? [`The life of the contacts decides the verdict and stands on a ${GENERIC_CURVE}.`]
    : [];
}
