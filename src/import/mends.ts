import { withRecord } from './read-rows.ts';
import type { Reading } from './reading.ts';

/** What of a row of a price list can be typed in place. */
export type MendRole = 'price' | 'description';

/** Of a mend that types nothing: the record is a row as it stands. */
export const AS_ROW = '';

/** Something typed for one row, kept by its line and its text so that it outlives another reading of the file. */
export interface Mend {
  /** Line of the file, from 1. */
  readonly line: number;
  /** The line as the file had it when it was mended. */
  readonly raw: string;
  /** A role of a price list, the name of a table's column, or AS_ROW. */
  readonly field: string;
  readonly text: string;
}

/** A mend that does not hold for the file as it is read now. */
export interface LostMend {
  readonly line: number;
  readonly sentence: string;
}

/** Where what was typed goes in the file. */
export interface MendPlaces {
  /** Column of the file that holds a field, from 0; undefined: none. */
  readonly columnOf: (field: string) => number | undefined;
  /** What the field is called in a sentence. */
  readonly nameOf: (field: string) => string;
}

/** The mends with one more, in the place of an earlier one of the same field. */
export function addMend(
  mends: readonly Mend[],
  reading: Reading,
  record: number,
  mend: Pick<Mend, 'field' | 'text'>,
): readonly Mend[] {
  const line = reading.lines[record]!;
  const others = mends.filter((held) => held.line !== line || held.field !== mend.field);
  return [...others, { ...mend, line, raw: reading.records.raw(record) }];
}

/**
 * A reading with everything that was typed put into it, where the line still is what it was. What was mended is
 * a row, as wide as the header.
 *
 * @returns the reading, and the mends that do not hold any more, each with a sentence
 */
export function applyMends(
  reading: Reading,
  { columnOf, nameOf }: MendPlaces,
  mends: readonly Mend[],
): { readonly reading: Reading; readonly lost: readonly LostMend[] } {
  const lost: LostMend[] = [];
  let mended = reading;
  for (const { line, raw, field, text } of mends) {
    const record = reading.lines.indexOf(line);
    const said =
      field === AS_ROW ? 'taken as a row' : `'${text.slice(0, 40)}', typed as its ${nameOf(field)}`;
    const what = `Line ${line}: ${said}, no longer applies`;
    const column = field === AS_ROW ? -1 : columnOf(field);
    if (record === -1 || reading.records.raw(record) !== raw) {
      lost.push({ line, sentence: `${what}: the line is read otherwise now. Look at it again.` });
    } else if (column === undefined) {
      lost.push({ line, sentence: `${what}: no column is the ${nameOf(field)} now. Choose one.` });
    } else {
      const fields = [...mended.records.at(record)];
      while (fields.length < Math.max(column + 1, reading.heads.length)) fields.push('');
      if (column >= 0) fields[column] = text;
      mended = withRecord(mended, record, fields);
    }
  }
  return { reading: mended, lost };
}
