import { type ChosenCall, keepsOld, type PrepReader } from './chosen-calls.ts';
import { gaugeFigure } from './gauge-figure.ts';

/** A part to be measured, or changed, at a place on the road. */
export interface RoadCheck {
  readonly part: string;
  readonly critical: boolean;
  /** It is to be changed here, not only looked at. */
  readonly change: boolean;
  readonly gauge: string;
  /** The reading that is likely there, and the limit; '' when there is none. */
  readonly expected: string;
  readonly limit: string;
  readonly unit: string;
}

/** What is to be looked at in one place. */
export interface CheckStop {
  readonly place: string;
  /** Distance from the start, as a number and as shown. */
  readonly at: number;
  readonly shownAt: string;
  readonly unit: string;
  readonly checks: readonly RoadCheck[];
}

/**
 * Where the parts that stay on are to be measured, and where those are changed that wait for a shop, in riding
 * order. A part that a new one replaces before the start is left out: the check is told for what is fitted now.
 */
export function roadChecksOf(calls: readonly ChosenCall[], reader: PrepReader): readonly CheckStop[] {
  const kept = new Map(calls.filter(keepsOld).map((call) => [call.part, call]));
  const stops = new Map<string, { place: string; at: number; shownAt: string; checks: RoadCheck[] }>();
  const add = (row: number, check: RoadCheck): void => {
    const [place, at] = [reader.text('check_place', row), reader.number('check_km', row)];
    const key = `${at} ${place}`;
    const stop = stops.get(key) ?? { place, at, shownAt: reader.words('check_km', row, 0), checks: [] };
    stops.set(key, stop);
    stop.checks.push(check);
  };
  const changed = new Set<string>();
  for (let row = 0; row < reader.rows('check_here'); row++) {
    const call = kept.get(reader.text('check_part', row));
    // Once a new one is on, what was reckoned for the old one is no longer to be looked for.
    if (call === undefined || changed.has(call.part)) continue;
    if (changesHere(call, reader, row)) {
      changed.add(call.part);
      add(row, checkOf(call, reader, Number.NaN, true));
    } else if (reader.yes('check_here', row)) {
      add(row, checkOf(call, reader, reader.number('check_reading', row), false));
    }
  }
  const unit = reader.unit('check_km');
  return [...stops.values()].sort((a, b) => a.at - b.at).map((stop) => ({ ...stop, unit }));
}

function changesHere(call: ChosenCall, reader: PrepReader, row: number): boolean {
  return call.kind === 'way' && reader.text('change_place', call.row) === reader.text('check_place', row);
}

function checkOf(call: ChosenCall, reader: PrepReader, expected: number, change: boolean): RoadCheck {
  return {
    part: call.part,
    critical: call.critical,
    change,
    gauge: reader.text('gauge', call.row),
    expected: gaugeFigure(expected),
    limit: change ? '' : gaugeFigure(reader.number('limit', call.row)),
    unit: reader.text('unit', call.row),
  };
}
