import type { Column, ColumnType, FigureColumn, Rows, TextColumn } from '../../formula/column.ts';
import { isPlain, sameDimensions } from '../../formula/unit.ts';
import { parseUnit } from '../../formula/unit-text.ts';
import type { CallKind, PlanCall, PlanInstance, PlanOffer, PlanSupplier } from '../../plan/plan-instance.ts';
import type { PlanRole } from '../document.ts';
import type { PlanQuestion } from './node-spec.ts';

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

/** One rider until a notebook holds two bikes; who rides alone needs no name. */
const RIDER = '';
const KINDS: readonly CallKind[] = ['leave', 'replace', 'carry', 'keep', 'way'];

/** Units in which a plan takes what it reads; others are converted, plain numbers are taken as they stand. */
const MEASURES: Partial<Record<PlanRole, string>> = {
  mass: 'kg',
  volume: 'L',
  hours: 'h',
  offer_days: 'day',
  mass_limit: 'kg',
  volume_limit: 'L',
  hours_limit: 'h',
  days_left: 'day',
  margin_days: 'day',
};

/** Puts the instance of the plan together from the notebook's columns (model, section 7). */
export function planQuestion(parts: PlanParts): PlanQuestion {
  const read = new RoleReader(parts);
  const rowOfOffer = new Map<string, number>();
  const names = partNames(parts, read);
  const calls = callsOf(parts, read, names);
  const instance: PlanInstance = {
    money: parts.money,
    days_to_cut_off: whole(read.single('days_left')),
    margin_days: whole(read.single('margin_days')) ?? 0,
    parts: names.map((name, row) => ({
      name,
      on_hand: Math.max(0, Math.round(orNought(read.figure('on_hand', row)))),
      set: read.text('set', row),
      critical: read.figure('critical', firstRow(parts, row)) !== 0,
      rider: RIDER,
      bag: null,
      stranding_cost: null,
    })),
    calls,
    offers: offersOf(read, new Set(names), rowOfOffer),
    suppliers: suppliersOf(read),
    jobs: [],
    limits: {
      cash: read.single('cash_limit'),
      shed_hours: read.single('hours_limit'),
      trip_risk: riskLimit(read.single('risk_limit')),
      packs: [
        {
          rider: RIDER,
          mass_kg: read.single('mass_limit'),
          volume_L: read.single('volume_limit'),
          packed_kg: 0,
          packed_L: 0,
          bags: [],
        },
      ],
    },
    pins: Object.entries(parts.pins)
      .filter(([part]) => names.includes(part))
      .map(([part, call]) => ({ part, call })),
    // A call that the choices no longer have is ruled out for good: nothing is left to forbid.
    forbidden: Object.entries(parts.forbidden).flatMap(([part, ruledOut]) =>
      calls
        .filter((call) => call.part === part && ruledOut.includes(call.name))
        .map(({ name }) => ({ part, call: name })),
    ),
  };
  return { instance, rowOfOffer };
}

/** Reads roles row by row, in the plan's units. */
class RoleReader {
  private readonly parts: PlanParts;
  private readonly factors = new Map<string, number>();

  constructor(parts: PlanParts) {
    this.parts = parts;
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
    const figure = this.figure(role, 0);
    return Number.isNaN(figure) ? null : figure;
  }

  rows(role: PlanRole): number {
    return this.parts.of(role)?.column.values.length ?? 0;
  }

  private factor(role: PlanRole | CallField, type: ColumnType): number {
    const held = this.factors.get(role);
    if (held !== undefined) return held;
    const wanted = MEASURES[role as PlanRole];
    const from = type.unit;
    const to = wanted === undefined ? null : parseUnit(wanted);
    const factor =
      from === null || to === null || isPlain(from) || !sameDimensions(from, to)
        ? 1
        : from.factor / to.factor;
    this.factors.set(role, factor);
    return factor;
  }
}

const orNought = (figure: number): number => (Number.isNaN(figure) ? 0 : figure);
const whole = (figure: number | null): number | null => (figure === null ? null : Math.round(figure));
/** A limit of 1 or more limits nothing. */
const riskLimit = (share: number | null): number | null =>
  share === null || share >= 0.999 ? null : Math.max(0, share);

function firstRow(parts: PlanParts, part: number): number {
  return (parts.rows.left as Int32Array).indexOf(part);
}

function partNames(parts: PlanParts, read: RoleReader): string[] {
  return Array.from({ length: parts.parts }, (_, part) => {
    const row = firstRow(parts, part);
    return (row < 0 ? null : read.text('part', row)) ?? `part ${part + 1}`;
  });
}

function callsOf(parts: PlanParts, read: RoleReader, names: readonly string[]): PlanCall[] {
  return Array.from({ length: parts.rows.length }, (_, row): PlanCall => {
    const [cost, cash, mass, volume, hours, need] = (
      ['cost', 'cash', 'mass', 'volume', 'hours', 'need'] as const
    ).map((role) => read.figure(role, row)) as [number, number, number, number, number, number];
    const untold = [cost, cash, mass, volume, hours, need].some((figure) => Number.isNaN(figure));
    const kind = read.text('kind', row) as CallKind | null;
    const barred =
      read.figure('allowed', row) === 1 ? null : (read.text('reason', row) ?? 'It is not allowed.');
    return {
      part: names[(parts.rows.left as Int32Array)[row] as number] ?? '',
      name: read.text('call', row) ?? `call ${row + 1}`,
      kind: kind !== null && KINDS.includes(kind) ? kind : 'leave',
      cost_without_cash: untold ? 0 : cost - cash,
      per_price: 0,
      per_stranding: 0,
      need: untold ? 0 : Math.max(0, Math.round(need)),
      sent_out: 0,
      mass_kg: untold ? 0 : mass,
      volume_L: untold ? 0 : volume,
      carried_by: null,
      shed_hours: untold ? 0 : hours,
      jobs: [],
      strand_chance: Math.min(0.999999, Math.max(0, orNought(read.figure('strand', row)))),
      held_back:
        barred ??
        (untold ? 'It cannot be worked out yet: a price, weight, volume or time is missing.' : null),
    };
  });
}

/** Pieces that one pack of an offer covers: of one part, or of several for a kit. */
function offersOf(
  read: RoleReader,
  names: ReadonlySet<string>,
  rowOfOffer: Map<string, number>,
): PlanOffer[] {
  const kits = new Map<string, (readonly [string, number])[]>();
  for (let row = 0; row < read.rows('kit'); row++) {
    const [kit, part] = [read.text('kit', row), read.text('kit_part', row)];
    const pieces = Math.round(read.figure('kit_pieces', row));
    if (kit === null || part === null || !(pieces > 0)) continue;
    kits.set(kit, [...(kits.get(kit) ?? []), [part, pieces]]);
  }
  const offers: PlanOffer[] = [];
  for (let row = 0; row < read.rows('offer'); row++) {
    const [fits, supplier] = [read.text('offer_fits', row), read.text('offer_supplier', row)];
    const [price, pieces, days] = [
      read.figure('offer_price', row),
      read.figure('offer_pieces', row),
      read.figure('offer_days', row),
    ];
    if (fits === null || supplier === null || !(price >= 0)) continue;
    const covers = (kits.get(fits) ?? [[fits, 1] as const])
      .map(([part, each]) => [part, each * Math.max(1, Math.round(orNought(pieces)))] as const)
      .filter(([part]) => names.has(part));
    if (covers.length === 0) continue;
    const number = read.text('offer', row) ?? '';
    const id = rowOfOffer.has(`${supplier} ${number}`)
      ? `${supplier} ${number} (${row + 1})`
      : `${supplier} ${number}`;
    rowOfOffer.set(id, row);
    offers.push({
      id,
      supplier,
      part_number: number,
      price,
      covers,
      kind: 'goods',
      arrives_in_days: Number.isNaN(days) ? null : Math.round(days),
    });
  }
  return offers;
}

function suppliersOf(read: RoleReader): PlanSupplier[] {
  const suppliers = new Map<string, PlanSupplier>();
  for (let row = 0; row < read.rows('supplier'); row++) {
    const name = read.text('supplier', row);
    if (name === null) continue;
    const free = read.figure('free_from', row);
    suppliers.set(name, {
      name,
      freight: Math.max(0, orNought(read.figure('freight', row))),
      free_from: Number.isNaN(free) ? null : free,
    });
  }
  // An offer whose supplier is not in the table comes without freight.
  for (let row = 0; row < read.rows('offer'); row++) {
    const name = read.text('offer_supplier', row);
    if (name !== null && !suppliers.has(name)) suppliers.set(name, { name, freight: 0, free_from: null });
  }
  return [...suppliers.values()];
}
