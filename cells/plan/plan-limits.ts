import { showNumber } from '../../src/formula/show.ts';
import { limitLines, takenOf } from '../../src/plan/limit-lines.ts';
import { limitName } from '../../src/plan/limit-words.ts';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import type { LimitKind, PlanTotals } from '../../src/plan/plan-result.ts';
import type { More, Saving } from '../../src/plan/what-if.ts';

/** One limit and what the plan takes of it. */
export interface LimitRow {
  readonly kind: LimitKind;
  /** The bag and its rider; null for what limits all of a pack, or all parts. */
  readonly bag: string | null;
  readonly rider: string | null;
  readonly name: string;
  readonly used: string;
  readonly limit: string;
  readonly unit: string;
  /** Used over the limit, 0 and up. */
  readonly share: number;
  readonly level: 'ok' | 'near' | 'over';
  /** What one more unit would save, once that was worked out; '' before. */
  readonly more: string;
}

/** One more unit of each limit, as asked: 50 of the money, 1 kg, 1 L, 1 h. */
export const ONE_MORE: More = { cash: 50, mass_kg: 1, volume_L: 1, shed_hours: 1 };

/** From this share on a limit is near. */
const NEAR_SHARE = 0.9;
/** Limits are kept to a rounding error, which must not show as one over. */
const OVER_SHARE = 1 + 1e-9;

/** Limits that bind are told by name where their use comes this close to them. */
const TIGHT_SHARE = 0.97;

/**
 * Every limit that is set, with what the plan takes of it.
 *
 * @param savings what one more unit of each would save; null until that is worked out
 */
export function limitRows(
  instance: PlanInstance,
  totals: PlanTotals,
  savings: readonly Saving[] | null,
): readonly LimitRow[] {
  return limitLines(instance).map((line) => {
    const used = takenOf(line, totals);
    const share = line.allowed > 0 ? used / line.allowed : used > 0 ? Number.POSITIVE_INFINITY : 0;
    const asked = savings?.find(
      (one) => one.limit === line.kind && one.rider === line.rider && one.bag === line.bag,
    );
    return {
      kind: line.kind,
      bag: line.bag,
      rider: line.rider,
      name: limitName(line),
      used: figureWords(line.kind, used),
      limit: figureWords(line.kind, line.allowed),
      unit: unitOf(line.kind, instance.money),
      share,
      level: share > OVER_SHARE ? 'over' : share >= NEAR_SHARE ? 'near' : 'ok',
      more: asked === undefined ? '' : savingWords(asked, instance.money),
    };
  });
}

/** Names and figures of the limits that the plan all but uses up: `Weight in the pack, 14.95 of 15.00 kg`. */
export function tightLimits(instance: PlanInstance, totals: PlanTotals): readonly string[] {
  return limitRows(instance, totals, null)
    .filter((row) => row.share >= TIGHT_SHARE)
    .map((row) => `${row.name}, ${row.used} of ${row.limit} ${row.unit}`);
}

function figureWords(kind: LimitKind, figure: number): string {
  return kind === 'trip_risk' ? showNumber(figure * 100, 1) : showNumber(figure, 2);
}

function unitOf(kind: LimitKind, money: string): string {
  return { cash: money, shed_hours: 'h', trip_risk: '%', mass_kg: 'kg', volume_L: 'L' }[kind];
}

/** `1 kg more saves 2.37 EUR`, `50 EUR more saves nothing`. */
function savingWords(saving: Saving, money: string): string {
  const more = `${showNumber(saving.more)} ${unitOf(saving.limit, money)} more`;
  if (saving.saves === null)
    return saving.sentence.includes('is enough') ? `${more} is enough` : `${more} is not enough`;
  if (saving.saves < 0.005) return `${more} saves nothing`;
  return `${more} saves ${saving.proven ? '' : 'about '}${showNumber(saving.saves, 2)} ${money}`;
}
