import type { CallKind, PlanCall, PlanInstance, PlanJob, PlanPart } from '../../plan/plan-instance.ts';
import { stockOf } from '../../plan/plan-instance.ts';
import type { PlanQuestion } from './node-spec.ts';
import { offersOf, suppliersOf } from './plan-offers.ts';
import { packsOf } from './plan-packs.ts';
import { orNought, type PlanParts, RoleReader } from './role-reader.ts';

const KINDS: readonly CallKind[] = ['leave', 'replace', 'carry', 'keep', 'way'];

/** Puts the instance of the plan together from the notebook's columns (model, section 7). */
export function planQuestion(parts: PlanParts): PlanQuestion {
  const read = new RoleReader(parts);
  const rowOfOffer = new Map<string, number>();
  const names = partNames(parts, read);
  const own = names.map((name, row) => partOf(parts, read, name, row));
  const jobs = jobsOf(read);
  const calls = callsOf(parts, read, names, jobs);
  const instance: PlanInstance = {
    money: parts.money,
    days_to_cut_off: whole(read.single('days_left')),
    margin_days: whole(read.single('margin_days')) ?? 0,
    parts: own,
    calls,
    offers: offersOf(read, new Set(own.map(stockOf)), rowOfOffer),
    suppliers: suppliersOf(read),
    jobs,
    limits: {
      cash: read.single('cash_limit'),
      shed_hours: read.single('hours_limit'),
      trip_risk: riskLimit(read.single('risk_limit')),
      packs: packsOf(read, own),
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

const whole = (figure: number | null): number | null => (figure === null ? null : Math.round(figure));
/** A limit of 1 or more limits nothing. */
const riskLimit = (share: number | null): number | null =>
  share === null || share >= 0.999 ? null : Math.max(0, share);

function partOf(parts: PlanParts, read: RoleReader, name: string, row: number): PlanPart {
  return {
    name,
    on_hand: Math.max(0, Math.round(orNought(read.figure('on_hand', row)))),
    stock: read.text('stock', row) || null,
    set: read.text('set', row),
    critical: read.figure('critical', firstRow(parts, row)) !== 0,
    rider: read.text('rider', row) ?? '',
    bag: null,
    rather_bag: read.text('rather_bag', row) || null,
    stranding_cost: null,
  };
}

/** What is set up once for several calls; what its hours cost only where the plan reads what an hour is worth. */
function jobsOf(read: RoleReader): PlanJob[] {
  const jobs = new Map<string, PlanJob>();
  for (let row = 0; row < read.rows('job'); row++) {
    const name = read.text('job', row);
    const setup_hours = read.figure('job_setup', row);
    if (name === null || name === '' || !(setup_hours > 0)) continue;
    jobs.set(name, { name, setup_hours, setup_cost: setup_hours * (read.single('hour_value') ?? 0) });
  }
  return [...jobs.values()];
}

/**
 * The job that a call opens, its setting up taken out of the call's own hours and cost, which count it in full
 * as if the part were alone. A call that takes fewer hours than that opens nothing.
 */
function sharedJob(
  read: RoleReader,
  jobs: readonly PlanJob[],
  part: number,
  hours: number,
): PlanJob | undefined {
  const name = read.text('part_job', part);
  return jobs.find((job) => job.name === name && job.setup_hours <= hours);
}

function firstRow(parts: PlanParts, part: number): number {
  return (parts.rows.left as Int32Array).indexOf(part);
}

function partNames(parts: PlanParts, read: RoleReader): string[] {
  return Array.from({ length: parts.parts }, (_, part) => {
    const row = firstRow(parts, part);
    return (row < 0 ? null : read.text('part', row)) ?? `part ${part + 1}`;
  });
}

function callsOf(
  parts: PlanParts,
  read: RoleReader,
  names: readonly string[],
  jobs: readonly PlanJob[],
): PlanCall[] {
  return Array.from({ length: parts.rows.length }, (_, row): PlanCall => {
    const [cost, cash, mass, volume, hours, need] = (
      ['cost', 'cash', 'mass', 'volume', 'hours', 'need'] as const
    ).map((role) => read.figure(role, row)) as [number, number, number, number, number, number];
    const sentOut = read.has('sent_out') ? read.figure('sent_out', row) : 0;
    const untold = [cost, cash, mass, volume, hours, need, sentOut].some((figure) => Number.isNaN(figure));
    const kind = read.text('kind', row) as CallKind | null;
    const barred =
      read.figure('allowed', row) === 1 ? null : (read.text('reason', row) ?? 'It is not allowed.');
    const part = (parts.rows.left as Int32Array)[row] as number;
    const job = untold ? undefined : sharedJob(read, jobs, part, hours);
    return {
      part: names[part] ?? '',
      name: read.text('call', row) ?? `call ${row + 1}`,
      kind: kind !== null && KINDS.includes(kind) ? kind : 'leave',
      cost_without_cash: untold ? 0 : cost - cash - (job?.setup_cost ?? 0),
      per_price: 0,
      per_stranding: 0,
      need: untold ? 0 : Math.max(0, Math.round(need)),
      sent_out: untold ? 0 : Math.max(0, Math.round(sentOut)),
      mass_kg: untold ? 0 : mass,
      volume_L: untold ? 0 : volume,
      carried_by: null,
      shed_hours: untold ? 0 : hours - (job?.setup_hours ?? 0),
      jobs: job === undefined ? [] : [job.name],
      strand_chance: Math.min(0.999999, Math.max(0, orNought(read.figure('strand', row)))),
      held_back:
        barred ??
        (untold ? 'It cannot be worked out yet: a price, weight, volume or time is missing.' : null),
    };
  });
}
