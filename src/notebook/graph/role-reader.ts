import type { Column, ColumnType, FigureColumn, Rows, TextColumn } from '../../formula/column.ts';
import { isPlain, sameDimensions, type Unit } from '../../formula/unit.ts';
import { parseUnit } from '../../formula/unit-text.ts';
import type { PlanRole } from '../document.ts';

/** A column that a plan reads, with the type it had when it was checked. */
export interface RoleColumn {
  readonly column: Column;
  readonly type: ColumnType;
}

export type CallField = 'part' | 'call' | 'allowed' | 'reason' | 'critical';

/** Everything a plan is put together from. */
export interface PlanParts {
  readonly money: string;
  readonly rows: Rows;
  readonly parts: number;
  readonly of: (role: PlanRole | CallField) => RoleColumn | null;
  readonly pins: Readonly<Record<string, string>>;
  readonly forbidden: Readonly<Record<string, readonly string[]>>;
}

/** Units in which a plan takes what it reads; others are converted, plain numbers are taken as they stand. */
const MEASURES: Partial<Record<PlanRole, string>> = {
  mass: 'kg',
  volume: 'L',
  hours: 'h',
  offer_days: 'day',
  job_setup: 'h',
  bag_mass: 'kg',
  bag_volume: 'L',
  bag_packed_mass: 'kg',
  bag_packed_volume: 'L',
  pack_mass: 'kg',
  pack_volume: 'L',
  mass_limit: 'kg',
  volume_limit: 'L',
  hours_limit: 'h',
  days_left: 'day',
  margin_days: 'day',
};

const measures = new Map<string, Unit>();

/** A plan's unit, read once: a question is put together after each edit. */
function measure(text: string): Unit {
  const unit = measures.get(text) ?? parseUnit(text);
  measures.set(text, unit);
  return unit;
}

/** Reads roles row by row, in the plan's units. */
export class RoleReader {
  private readonly parts: PlanParts;
  private readonly factors = new Map<string, number>();

  constructor(parts: PlanParts) {
    this.parts = parts;
  }

  /** Whether the plan reads the role at all. */
  has(role: PlanRole | CallField): boolean {
    return this.parts.of(role) !== null;
  }

  /** A figure in the plan's unit; NaN when missing, faulty or not read at all. */
  figure(role: PlanRole | CallField, row: number): number {
    const held = this.parts.of(role);
    if (held === null || held.column.kind === 'text' || held.column.faults?.has(row)) return Number.NaN;
    return ((held.column as FigureColumn).values[row] ?? Number.NaN) * this.factor(role, held.type);
  }

  text(role: PlanRole | CallField, row: number): string | null {
    const held = this.parts.of(role);
    return held?.column.kind === 'text' && !held.column.faults?.has(row)
      ? ((held.column as TextColumn).values[row] ?? null)
      : null;
  }

  single(role: PlanRole): number | null {
    return orNone(this.figure(role, 0));
  }

  rows(role: PlanRole): number {
    return this.parts.of(role)?.column.values.length ?? 0;
  }

  private factor(role: PlanRole | CallField, type: ColumnType): number {
    const held = this.factors.get(role);
    if (held !== undefined) return held;
    const wanted = MEASURES[role as PlanRole];
    const from = type.unit;
    const to = wanted === undefined ? null : measure(wanted);
    const factor =
      from === null || to === null || isPlain(from) || !sameDimensions(from, to)
        ? 1
        : from.factor / to.factor;
    this.factors.set(role, factor);
    return factor;
  }
}

/** A missing figure as 0. */
export const orNought = (figure: number): number => (Number.isNaN(figure) ? 0 : figure);
/** A missing figure as null: no limit. */
export const orNone = (figure: number): number | null => (Number.isNaN(figure) ? null : figure);
