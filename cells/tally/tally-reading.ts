import type { ColumnType } from '../../src/formula/column.ts';
import { showFigure } from '../../src/formula/show.ts';
import type { TallyCell, TallyFigure } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { readShown } from '../../src/notebook/shown-units.ts';
import { unitWords } from '../shared/figure-words.ts';

/**
 * Names of the figures that a tally shows, limits too.
 *
 * @example figuresOf({ figures: [{ label: 'Cash', figure: 'spending', limit: 'budget' }], ... }) // ['spending', 'budget']
 */
export function figuresOf(tally: TallyCell | undefined): readonly string[] {
  return (
    tally?.figures.flatMap(({ figure, limit }) => (limit === undefined ? [figure] : [figure, limit])) ?? []
  );
}

/** From this share of a limit on, the gauge is striped and says how much is left. */
const NEAR_SHARE = 0.9;

/** Words of a difference that would not show. */
export const NO_CHANGE = 'no change';

export type TallyLevel = 'ok' | 'near' | 'over';

/** One figure of the tally as it is shown. */
export interface TallyReading {
  readonly label: string;
  /** Name of the figure. */
  readonly node: string;
  /** The figure in its own unit (a chance stays 0 to 1); null while there is none. */
  readonly value: number | null;
  /** As shown, '–' when there is none. */
  readonly shown: string;
  readonly unit: string;
  /** Shown before the figure is settled again, or its fault in a few words; '' when settled. */
  readonly state: '' | 'working' | 'waits' | 'fault';
  readonly limit: {
    readonly value: number;
    readonly shown: string;
    readonly share: number;
    readonly level: TallyLevel;
  } | null;
  /** `37 left`, `1.3 over`, or ''. */
  readonly room: string;
}

interface Known {
  readonly value: number;
  readonly type: ColumnType;
  readonly working: boolean;
}

/**
 * Reads one figure of a tally.
 *
 * @example readTally(notebook, { label: 'Cash', figure: 'spending', limit: 'cash_limit', decimals: 0 })
 *   // { shown: '443', unit: 'EUR', limit: { shown: '480', share: 0.923, level: 'near' }, room: '37 left', ... }
 */
export function readTally(notebook: LiveNotebook, figure: TallyFigure): TallyReading {
  const read = readShown(notebook, figure.figure);
  const known = knownFigure(notebook, figure.figure);
  const base = { label: figure.label, node: figure.figure };
  if (!known) {
    const state =
      read.state === 'working'
        ? 'working'
        : read.state === 'waiting'
          ? 'waits'
          : read.state === 'fault'
            ? 'fault'
            : '';
    return { ...base, value: null, shown: '–', unit: '', state, limit: null, room: '' };
  }
  const show = (value: number): string => showTallyFigure(value, figure, known.type);
  const limit = figure.limit === undefined ? null : readLimit(notebook, figure.limit, known.value, show);
  return {
    ...base,
    value: known.value,
    shown: show(known.value),
    unit: figure.percent ? '%' : unitWords(known.type),
    state: known.working ? 'working' : '',
    limit,
    room: limit ? roomWords(known.value, limit, show) : '',
  };
}

/** A figure of a tally as text, in percent where the tally says so; no unit. */
export function showTallyFigure(value: number, figure: TallyFigure, type: ColumnType): string {
  const shown = figure.percent ? value * 100 : value;
  return showFigure(
    { kind: 'number', values: Float64Array.of(shown), faults: null },
    0,
    type,
    figure.decimals ?? (figure.percent ? 1 : undefined),
  );
}

/**
 * A difference of a tally figure with its sign: `−46 EUR`, `+0.2 pt`, `no change` when none would show.
 *
 * @param unit 'pt' stands for the points of a percentage
 */
export function differenceWords(difference: number, figure: TallyFigure, type: ColumnType): string {
  const size = showTallyFigure(Math.abs(difference), figure, type);
  // A difference below the last place shown, `<0.1`, is none to the eye.
  if (!/[1-9]/.test(size) || size.startsWith('<')) return NO_CHANGE;
  const unit = figure.percent ? 'pt' : unitWords(type);
  return `${difference < 0 ? '−' : '+'}${size}${unit ? ` ${unit}` : ''}`;
}

/** The one figure of a node as it is kept; null while there is none. */
export function keptFigure(
  notebook: LiveNotebook,
  node: string,
): { readonly value: number | null; readonly working: boolean } {
  const read = notebook.read(node);
  const held = read.state === 'settled' ? read : read.state === 'working' ? read.last : null;
  const value = held && held.column.kind !== 'text' ? (held.column.values[0] ?? Number.NaN) : Number.NaN;
  return { value: Number.isNaN(value) ? null : value, working: read.state === 'working' };
}

function knownFigure(notebook: LiveNotebook, node: string): Known | null {
  const read = readShown(notebook, node);
  const held = read.state === 'settled' ? read : read.state === 'working' ? read.last : null;
  const value = held && held.column.kind !== 'text' ? held.column.values[0] : undefined;
  if (!held || value === undefined || Number.isNaN(value)) return null;
  return { value, type: held.type, working: read.state === 'working' };
}

function readLimit(
  notebook: LiveNotebook,
  node: string,
  used: number,
  show: (value: number) => string,
): TallyReading['limit'] {
  const known = knownFigure(notebook, node);
  if (!known) return null;
  const share = known.value > 0 ? used / known.value : used > 0 ? Number.POSITIVE_INFINITY : 0;
  const level: TallyLevel = share > 1 ? 'over' : share >= NEAR_SHARE ? 'near' : 'ok';
  return { value: known.value, shown: show(known.value), share, level };
}

function roomWords(
  used: number,
  limit: NonNullable<TallyReading['limit']>,
  show: (value: number) => string,
): string {
  if (limit.level === 'over') return `${show(used - limit.value)} over`;
  return limit.level === 'near' ? `${show(limit.value - used)} left` : '';
}
