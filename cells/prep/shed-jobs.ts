import type { ChosenCall, PrepReader } from './chosen-calls.ts';
import { type Handling, handlingOf } from './handling.ts';

/** A part to be fitted in the shed. */
export interface ShedJob {
  readonly part: string;
  readonly call: ChosenCall;
  readonly hours: number;
  readonly hint: string;
  /** What is measured afterwards, '' when it has no gauge. */
  readonly gauge: string;
  readonly unit: string;
}

/** Jobs for which the same thing comes off, so that it comes off once. */
export interface JobGroup {
  /** `Rear wheel out`; '' for jobs that open nothing in common. */
  readonly opens: string;
  readonly jobs: readonly ShedJob[];
  readonly hours: number;
}

/**
 * The new parts to be fitted, those that share an opening together, in the order of their turns.
 *
 * Hours of a group: those of its calls, less what setting up once saves where the notebook says what it takes.
 */
export function shedJobsOf(calls: readonly ChosenCall[], reader: PrepReader): readonly JobGroup[] {
  const handling = handlingOf(reader);
  const jobs = calls
    .filter((call) => reader.number('hours', call.row) > 0)
    .map((call) => ({ call, how: handling.get(call.part) }))
    .sort((a, b) => turnOf(a.how) - turnOf(b.how));
  const groups = new Map<string, ShedJob[]>();
  for (const { call, how } of jobs) {
    const opens = how?.opens ?? '';
    const group = groups.get(opens) ?? [];
    if (group.length === 0) groups.set(opens, group);
    group.push({
      part: call.part,
      call,
      hours: reader.number('hours', call.row),
      hint: how?.hint ?? '',
      gauge: reader.text('gauge', call.row),
      unit: reader.text('unit', call.row),
    });
  }
  return [...groups].map(([opens, own]) => ({
    opens,
    jobs: own,
    hours: own.reduce((sum, job) => sum + job.hours, 0) - sharedHours(opens, own, reader),
  }));
}

/** Hours that several calls count and that are spent once. */
function sharedHours(opens: string, jobs: readonly ShedJob[], reader: PrepReader): number {
  for (let row = 0; row < reader.rows('setup_job'); row++) {
    if (opens === '' || reader.text('setup_job', row) !== opens) continue;
    const setup = reader.number('setup_hours', row);
    const sharing = jobs.filter(({ hours }) => hours >= setup).length;
    return setup > 0 ? Math.max(0, sharing - 1) * setup : 0;
  }
  return 0;
}

const turnOf = (how: Handling | undefined): number => how?.turn ?? Number.MAX_VALUE;
