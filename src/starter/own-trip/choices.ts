import type { TableCell } from '../../notebook/document.ts';
import type { CataloguePart } from './part-catalogue.ts';

/** A part that the rider has ticked, and the one figure that it asks for, where it is known. */
export interface TickedPart {
  readonly part: CataloguePart;
  /** In the part's own unit; null: not known yet. */
  readonly now: number | null;
  /** Sealed km since it was fitted; null: not known yet. */
  readonly ageKm: number | null;
}

/** A leg as it is typed; what is not known is null. */
export interface TypedLeg {
  readonly start: string;
  readonly end: string;
  readonly distanceKm: number | null;
  readonly surface: string | null;
  readonly helpKm: number | null;
  readonly waitDays: number | null;
  readonly shop: boolean;
  readonly fuel: boolean;
  readonly water: boolean;
}

/** All that the rider has said, step by step; what was skipped is left as it was. */
export interface OwnTripChoices {
  readonly title: string;
  /** ISO 4217 code. */
  readonly money: string;
  /** The day on which it is begun, YYYY-MM-DD. */
  readonly today: string;
  /** Dates, sums and limits by the name of the value; a sum that is left out keeps the example's figure. */
  readonly values: Readonly<Record<string, number | string>>;
  readonly parts: readonly TickedPart[];
  readonly legs: readonly TypedLeg[];
  /** Tables that were brought in whole, by id: the legs, the offers, suppliers and rates. */
  readonly brought: Readonly<Record<string, TableCell>>;
}

/** Whether a part asks for an age, rather than for a reading. */
export function asksAge({ judgedBy }: CataloguePart): boolean {
  return judgedBy === 'life' || judgedBy === 'sudden';
}

/** Whether the one figure that a part asks for is known; one that goes by chance asks for none. */
export function isTold({ part, now, ageKm }: TickedPart): boolean {
  if (part.judgedBy === 'chance') return true;
  return (asksAge(part) ? ageKm : now) !== null;
}
