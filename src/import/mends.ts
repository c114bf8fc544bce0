import { columnsOf, type Match } from './match-columns.ts';
import { withRecord } from './read-rows.ts';
import type { Reading } from './reading.ts';

/** What of a row can be typed in place. */
export type MendRole = 'price' | 'description';

/** Something typed for one row, kept by its line and its text so that it outlives another reading of the file. */
export interface Mend {
  /** Line of the file, from 1. */
  readonly line: number;
  /** The line as the file had it when it was mended. */
  readonly raw: string;
  readonly role: MendRole;
  readonly text: string;
}

/** A mend that does not hold for the file as it is read now. */
export interface LostMend {
  readonly line: number;
  readonly sentence: string;
}

const ROLE_NAMES: Readonly<Record<MendRole, string>> = { price: 'price', description: 'name' };

/** The mends with one more, in the place of an earlier one of the same field. */
export function addMend(
  mends: readonly Mend[],
  reading: Reading,
  record: number,
  mend: Pick<Mend, 'role' | 'text'>,
): readonly Mend[] {
  const line = reading.lines[record]!;
  const others = mends.filter((held) => held.line !== line || held.role !== mend.role);
  return [...others, { ...mend, line, raw: reading.records.raw(record) }];
}

/**
 * A reading with everything that was typed put into it, where the line still is what it was.
 *
 * @returns the reading, and the mends that do not hold any more, each with a sentence
 */
export function applyMends(
  reading: Reading,
  match: Match,
  mends: readonly Mend[],
): { readonly reading: Reading; readonly lost: readonly LostMend[] } {
  const lost: LostMend[] = [];
  let mended = reading;
  for (const { line, raw, role, text } of mends) {
    const record = reading.lines.indexOf(line);
    const what = `Line ${line}: '${text.slice(0, 40)}', typed as its ${ROLE_NAMES[role]}, no longer applies`;
    const column = columnsOf(match, role)[0];
    if (record === -1 || reading.records.raw(record) !== raw) {
      lost.push({ line, sentence: `${what}: the line is read otherwise now. Look at it again.` });
    } else if (column === undefined) {
      lost.push({ line, sentence: `${what}: no column is the ${ROLE_NAMES[role]} now. Choose one.` });
    } else {
      const fields = [...mended.records.at(record)];
      while (fields.length <= column) fields.push('');
      fields[column] = text;
      mended = withRecord(mended, record, fields);
    }
  }
  return { reading: mended, lost };
}
