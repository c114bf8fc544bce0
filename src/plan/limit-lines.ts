import type { PlanInstance } from './plan-instance.ts';
import type { LimitKind, PlanTotals } from './plan-result.ts';

/** One limit of the instance, wherever it holds: the cash, one rider's kilograms, one bag's litres. */
export interface LimitLine {
  readonly kind: LimitKind;
  readonly rider: string | null;
  readonly bag: string | null;
  /** In the limit's own unit; a chance for `trip_risk`. */
  readonly allowed: number;
}

/** All limits that are set, in the order in which they are reported. */
export function limitLines({ limits }: PlanInstance): readonly LimitLine[] {
  const lines: LimitLine[] = [];
  const add = (kind: LimitKind, allowed: number | null, rider: string | null, bag: string | null): void => {
    if (allowed !== null) lines.push({ kind, rider, bag, allowed });
  };
  add('cash', limits.cash, null, null);
  add('shed_hours', limits.shed_hours, null, null);
  add('trip_risk', limits.trip_risk, null, null);
  for (const pack of limits.packs) {
    add('mass_kg', pack.mass_kg, pack.rider, null);
    add('volume_L', pack.volume_L, pack.rider, null);
    for (const bag of pack.bags) {
      add('mass_kg', bag.mass_kg, pack.rider, bag.name);
      add('volume_L', bag.volume_L, pack.rider, bag.name);
    }
  }
  return lines;
}

/** What the plan takes of the limit, in the limit's own unit. */
export function takenOf(line: LimitLine, totals: PlanTotals): number {
  if (line.kind === 'cash' || line.kind === 'shed_hours' || line.kind === 'trip_risk')
    return totals[line.kind];
  const pack = totals.packs.find(({ rider }) => rider === line.rider);
  const holder = line.bag === null ? pack : pack?.bags.find(({ name }) => name === line.bag);
  return holder?.[line.kind] ?? 0;
}

/** -ln(1 - chance), so that chances of several parts add up; a certain stranding is cut off at 1e-9 from it. */
export const hazardOf = (chance: number): number => -Math.log1p(-Math.min(chance, 1 - 1e-9));

/** The limit in the unit of its row in the programme. */
export const rowLimit = (line: LimitLine): number =>
  line.kind === 'trip_risk' ? hazardOf(line.allowed) : line.allowed;

/**
 * What one whole shortfall is measured against, in the row's unit: the limit itself, so that shortfalls of
 * different limits compare; for a limit of 0, one unit (money, kg, L, h), and a chance of 1% for the risk.
 */
export function shortfallScale(line: LimitLine): number {
  if (line.allowed > 0) return rowLimit(line);
  return line.kind === 'trip_risk' ? hazardOf(0.01) : 1;
}
