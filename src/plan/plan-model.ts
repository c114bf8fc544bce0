import { hazardOf, type LimitLine, limitLines, rowLimit, shortfallScale } from './limit-lines.ts';
import { type OpenTable, onShelf } from './open-calls.ts';
import {
  fitsNew,
  type PlanCall,
  type PlanInstance,
  type PlanPart,
  packerOf,
  stockOf,
} from './plan-instance.ts';
import { type Programme, ProgrammeBuilder } from './programme.ts';

type Terms = [column: number, factor: number][];

/** What the programme makes least. */
export type Aim =
  /** Total expected cost, within the limits. */
  | { readonly kind: 'cost' }
  /** How far the limits are passed, each in shares of itself: for when no plan fits. */
  | { readonly kind: 'shortfall' }
  /** Total expected cost, with the limits passed by `atMost` in all. */
  | { readonly kind: 'cost-at-shortfall'; readonly atMost: number };

/** Adds the second look that settles ties: what is made least among plans of about the same first aim. */
export interface Tie {
  /** Plans may cost this much, money. */
  readonly costAtMost: number;
}

/** A programme with the meaning of its columns. */
export interface PlanModel {
  readonly programme: Programme;
  readonly calls: readonly CallColumn[];
  readonly packs: readonly { readonly offer: string; readonly column: number }[];
  readonly bags: readonly { readonly call: CallColumn; readonly bag: string; readonly column: number }[];
}

export interface CallColumn {
  readonly part: PlanPart;
  readonly call: PlanCall;
  readonly column: number;
  /** Place among the part's calls, from 0. */
  readonly place: number;
}

/**
 * The programme of section 7 of the model: one call a part, whole packs of each offer, least total expected
 * cost under all the limits.
 *
 *     x[p,c]   call c is made for part p              n[o]   packs of offer o, at most N[o]
 *     open[s]  anything is bought at supplier s       free[s]  its freight is free
 *     y[g]     job g is set up                        b[p,c,bag]  the call's spares go into the bag
 *     z[l]     shortfall of limit l, only when no plan fits
 *
 * Parts of a set share "a new piece is fitted": replace, or replace and keep the old one as the spare.
 * With a `tie`, the cost becomes a row, and what is made least is the number of packs bought, then the
 * places of the calls in their lists, summed: whole numbers, so that this second look is exact as well.
 */
export function planModel(
  instance: PlanInstance,
  table: OpenTable,
  aim: Aim,
  tie: Tie | null = null,
): PlanModel {
  const build = new ProgrammeBuilder();
  const cost: Terms = [];
  const calls = callColumns(build, table, cost);
  const cash: Terms = [];
  const packs = offerColumns(build, instance, table, calls, cash);
  cost.push(...cash);
  const bags = bagColumns(build, instance, calls);
  const jobs = jobColumns(build, instance, calls);
  cost.push(...jobs.map(({ column, job }): [number, number] => [column, job.setup_cost]));
  const taken = limitTerms(instance, calls, cash, bags, jobs);
  const shortfall = limitRows(build, taken, aim.kind !== 'cost');
  if (aim.kind === 'cost-at-shortfall') build.atMost(aim.atMost, shortfall);
  if (tie) build.atMost(tie.costAtMost, cost);
  const aimTerms = tie ? tieTerms(calls, packs, table) : aim.kind === 'shortfall' ? shortfall : cost;
  const programme = build.programme();
  return { programme: { ...programme, cost: dense(aimTerms, programme.cost.length) }, calls, packs, bags };
}

function dense(terms: Terms, length: number): number[] {
  const cost = new Array<number>(length).fill(0);
  for (const [column, factor] of terms) cost[column] = cost[column]! + factor;
  return cost;
}

function callColumns(build: ProgrammeBuilder, table: OpenTable, cost: Terms): CallColumn[] {
  const columns: CallColumn[] = [];
  const setFitted = new Map<string, Terms>();
  for (const { part, calls, pinned } of table.parts) {
    const own = calls.map((call, place) => ({ part, call, column: build.yesNo(), place }));
    build.equal(
      1,
      own.map(({ column }) => [column, 1]),
    );
    for (const { call, column } of own) {
      if (pinned) build.fix(column, call === pinned ? 1 : 0);
      cost.push([column, call.cost_without_cash]);
    }
    columns.push(...own);
    if (part.set === null) continue;
    const fitted: Terms = own.filter(({ call }) => fitsNew(call)).map(({ column }) => [column, 1]);
    const first = setFitted.get(part.set);
    if (first) build.equal(0, [...first, ...fitted.map(([column]): [number, number] => [column, -1])]);
    else setFitted.set(part.set, fitted);
  }
  return columns;
}

/** Offers, freight and what must be bought; adds to `cash` all that is paid. */
function offerColumns(
  build: ProgrammeBuilder,
  instance: PlanInstance,
  table: OpenTable,
  calls: readonly CallColumn[],
  cash: Terms,
): PlanModel['packs'] {
  const packs = table.offers.map(({ offer, most_packs }) => {
    const column = build.wholeUpTo(most_packs);
    cash.push([column, offer.price]);
    return { offer: offer.id, column, of: offer, most: most_packs };
  });
  needRows(build, packs, calls, instance);
  for (const { name, freight, free_from } of instance.suppliers) {
    const sold = packs.filter(({ of }) => of.supplier === name);
    if (sold.length === 0 || freight === 0 || (free_from !== null && free_from <= 0)) continue;
    const open = build.yesNo();
    cash.push([open, freight]);
    for (const { column, most } of sold)
      build.atMost(0, [
        [column, 1],
        [open, -most],
      ]);
    if (free_from === null) continue;
    const free = build.yesNo();
    cash.push([free, -freight]);
    build.atMost(0, [
      [free, 1],
      [open, -1],
    ]);
    build.atLeast(0, [
      ...sold.map(({ column, of }): [number, number] => [column, of.price]),
      [free, -free_from],
    ]);
  }
  return packs.map(({ offer, column }) => ({ offer, column }));
}

interface Wanted {
  readonly kind: 'goods' | 'workshop';
  readonly stock: string;
  readonly takers: Set<string>;
  readonly terms: Terms;
}

/**
 * What is bought covers what the calls need, stock by stock, for goods and for work sent out. Where one part
 * alone takes the piece it has one call, so what is on hand is taken off each call's need; and two more things
 * are said that whole numbers imply and that shorten the search: a pack counts for no more than the largest
 * need, and any need takes a pack. Like parts share what is on hand, so their needs are added up first.
 */
function needRows(
  build: ProgrammeBuilder,
  packs: readonly { readonly of: OpenTable['offers'][number]['offer']; readonly column: number }[],
  calls: readonly CallColumn[],
  { parts }: PlanInstance,
): void {
  const shelf = onShelf(parts);
  const wants = new Map<string, Wanted>();
  const want = (kind: Wanted['kind'], { part, column }: CallColumn, pieces: number): void => {
    if (pieces <= 0) return;
    const stock = stockOf(part);
    const held = wants.get(`${kind} ${stock}`) ?? { kind, stock, takers: new Set(), terms: [] };
    held.takers.add(part.name);
    held.terms.push([column, pieces]);
    wants.set(`${kind} ${stock}`, held);
  };
  for (const one of calls) {
    want('goods', one, one.call.need);
    want('workshop', one, one.call.sent_out);
  }
  const minus = (terms: Terms): Terms => terms.map(([column, factor]) => [column, -factor]);
  for (const { kind, stock, takers, terms } of wants.values()) {
    const held = kind === 'goods' ? (shelf.get(stock) ?? 0) : 0;
    const covering = packs.flatMap(({ of, column }): Terms => {
      const pieces = of.kind === kind ? of.covers.find(([name]) => name === stock)?.[1] : undefined;
      return pieces === undefined ? [] : [[column, pieces]];
    });
    if (takers.size > 1) {
      build.atLeast(-held, [...covering, ...minus(terms)]);
      continue;
    }
    const wanted = terms.flatMap(
      ([column, pieces]): Terms => (pieces > held ? [[column, pieces - held]] : []),
    );
    if (wanted.length === 0) continue;
    const most = Math.max(...wanted.map(([, pieces]) => pieces));
    const capped: Terms = covering.map(([column, pieces]) => [column, Math.min(pieces, most)]);
    build.atLeast(0, [...capped, ...minus(wanted)]);
    if (!capped.some(([, pieces]) => pieces > 1)) continue;
    const each = (of: Terms): Terms => of.map(([column]) => [column, 1]);
    build.atLeast(0, [...each(covering), ...minus(each(wanted))]);
  }
}

const packsAnything = (call: PlanCall): boolean => call.mass_kg > 0 || call.volume_L > 0;

/** For each call that packs something, for a rider with bags: which bag it goes into. */
function bagColumns(
  build: ProgrammeBuilder,
  instance: PlanInstance,
  calls: readonly CallColumn[],
): PlanModel['bags'] {
  const found: { call: CallColumn; bag: string; column: number }[] = [];
  for (const one of calls) {
    const packer = packerOf(one.part, one.call);
    const bags = instance.limits.packs.find(({ rider }) => rider === packer)?.bags ?? [];
    if (bags.length === 0 || !packsAnything(one.call)) continue;
    // A part's bag is one of its own rider's; in the other rider's pack the plan chooses.
    const own = packer === one.part.rider ? one.part.bag : null;
    const into = own === null ? bags : bags.filter(({ name }) => name === own);
    const columns = into.map(({ name }) => ({ call: one, bag: name, column: build.yesNo() }));
    build.equal(0, [
      ...columns.map(({ column }): [number, number] => [column, 1]),
      [one.column, -1] as [number, number],
    ]);
    found.push(...columns);
  }
  return found;
}

/** What each limit is taken up by: its terms, and what is taken whatever the plan. */
interface Taken {
  readonly line: LimitLine;
  readonly terms: Terms;
  readonly already: number;
}

function limitTerms(
  instance: PlanInstance,
  calls: readonly CallColumn[],
  cash: Terms,
  bags: PlanModel['bags'],
  jobs: readonly JobColumn[],
): Taken[] {
  const hours: Terms = [
    ...calls.map(({ call, column }): [number, number] => [column, call.shed_hours]),
    ...jobs.map(({ column, job }): [number, number] => [column, job.setup_hours]),
  ];
  return limitLines(instance).map((line) => {
    if (line.kind === 'cash') return { line, terms: cash, already: 0 };
    if (line.kind === 'shed_hours') return { line, terms: hours, already: 0 };
    if (line.kind === 'trip_risk')
      return {
        line,
        terms: calls.map(({ call, column }) => [column, hazardOf(call.strand_chance)]),
        already: 0,
      };
    return packTerms(instance, calls, bags, line, line.kind);
  });
}

function packTerms(
  instance: PlanInstance,
  calls: readonly CallColumn[],
  bags: PlanModel['bags'],
  line: LimitLine,
  kind: 'mass_kg' | 'volume_L',
): Taken {
  const packed = kind === 'mass_kg' ? 'packed_kg' : 'packed_L';
  const pack = instance.limits.packs.find(({ rider }) => rider === line.rider);
  const holder = line.bag === null ? pack : pack?.bags.find(({ name }) => name === line.bag);
  const already = holder?.[packed] ?? 0;
  const isHere = ({ part, call }: CallColumn): boolean => packerOf(part, call) === line.rider;
  const terms: Terms =
    line.bag === null
      ? calls.filter(isHere).map(({ call, column }) => [column, call[kind]])
      : bags
          .filter(({ bag, call }) => bag === line.bag && isHere(call))
          .map(({ call, column }) => [column, call.call[kind]]);
  return { line, terms, already };
}

interface JobColumn {
  readonly job: PlanInstance['jobs'][number];
  readonly column: number;
}

/** The setting up of each job that any call opens. */
function jobColumns(
  build: ProgrammeBuilder,
  instance: PlanInstance,
  calls: readonly CallColumn[],
): JobColumn[] {
  return instance.jobs.flatMap((job) => {
    const opening = calls.filter(({ call }) => call.jobs.includes(job.name));
    if (opening.length === 0 || (job.setup_hours === 0 && job.setup_cost === 0)) return [];
    // Held up to 1 by the calls that open it and down by hours and cost, so it need not be said to be whole.
    const column = build.amount(1);
    for (const one of opening)
      build.atMost(0, [
        [one.column, 1],
        [column, -1],
      ]);
    return [{ job, column }];
  });
}

/** The limits' rows; with `soft`, each may be passed, and the sum of shortfalls in shares of the limit is given. */
function limitRows(build: ProgrammeBuilder, taken: readonly Taken[], soft: boolean): Terms {
  const shortfall: Terms = [];
  for (const { line, terms, already } of taken) {
    const row: Terms = [...terms];
    if (soft) {
      const z = build.amount();
      row.push([z, -1]);
      shortfall.push([z, 1 / shortfallScale(line)]);
    }
    build.atMost(rowLimit(line) - already, row);
  }
  return shortfall;
}

/** One pack fewer outweighs any order of the calls. */
function tieTerms(calls: readonly CallColumn[], packs: PlanModel['packs'], table: OpenTable): Terms {
  const mostPlaces = table.parts.reduce((total, { calls: own }) => total + own.length - 1, 0);
  return [
    ...packs.map(({ column }): [number, number] => [column, mostPlaces + 1]),
    ...calls.map(({ column, place }): [number, number] => [column, place]),
  ];
}
