import type { PrepCell, TallyCell } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { ColumnReader } from '../shared/column-reader.ts';
import { readTally, type TallyReading } from '../tally/tally-reading.ts';
import { type ChosenCall, chosenCalls, keepsOld, type PrepReader } from './chosen-calls.ts';
import { gaugeFigure } from './gauge-figure.ts';
import { type Bag, packListOf } from './pack-list.ts';
import { type Refills, refillsOf } from './refills.ts';
import { type CheckStop, roadChecksOf } from './road-checks.ts';
import { type JobGroup, shedJobsOf } from './shed-jobs.ts';
import { type Shopping, shoppingOf } from './shopping.ts';

/** A part that stays on as it is: to be looked at once more before the start. */
export interface LeftOn {
  readonly part: string;
  readonly critical: boolean;
  readonly gauge: string;
  readonly now: string;
  readonly limit: string;
  readonly unit: string;
  /** As the table of calls names it, and in words: `Carry a spare`. */
  readonly call: string;
  readonly words: string;
}

/** All that a prep sheet shows, as it stands now. */
export interface PrepReading {
  readonly title: string;
  readonly notebook: string;
  readonly gist: string;
  /** The notebook's money: `EUR`. */
  readonly money: string;
  /** Units in which the notebook shows what is packed. */
  readonly massUnit: string;
  readonly volumeUnit: string;
  readonly cutOff: number;
  readonly shopping: Shopping;
  readonly jobs: readonly JobGroup[];
  readonly hours: number;
  readonly bags: readonly Bag[];
  readonly checks: readonly CheckStop[];
  readonly refills: Refills;
  readonly leftOn: readonly LeftOn[];
  /** The figures that the notebook keeps in sight. */
  readonly figures: readonly TallyReading[];
}

/**
 * Reads everything that the sheet is made of. Nothing is worked out here but sums of its own lines and dates.
 */
export function readPrep(notebook: LiveNotebook, cell: PrepCell): PrepReading {
  const reader: PrepReader = new ColumnReader(notebook, cell.reads);
  const calls = chosenCalls(notebook, cell, reader);
  const jobs = shedJobsOf(calls, reader);
  const { document } = notebook;
  const tally = document.cells.find((one): one is TallyCell => one.kind === 'tally');
  return {
    title: cell.title,
    notebook: document.title,
    gist: document.gist,
    money: reader.unit('cash') || document.money,
    massUnit: reader.unit('mass') || 'kg',
    volumeUnit: reader.unit('volume') || 'L',
    cutOff: reader.number('cut_off'),
    shopping: shoppingOf(calls, reader),
    jobs,
    hours: jobs.reduce((sum, group) => sum + group.hours, 0),
    bags: packListOf(calls, reader),
    checks: roadChecksOf(calls, reader),
    refills: refillsOf(reader),
    leftOn: calls.filter(keepsOld).map((call) => leftOn(call, reader)),
    figures: tally?.figures.map((figure) => readTally(notebook, figure)) ?? [],
  };
}

function leftOn(call: ChosenCall, reader: PrepReader): LeftOn {
  return {
    part: call.part,
    critical: call.critical,
    gauge: reader.text('gauge', call.row),
    now: gaugeFigure(reader.number('now', call.row)),
    limit: gaugeFigure(reader.number('limit', call.row)),
    unit: reader.text('unit', call.row),
    call: call.call,
    words: call.words,
  };
}
