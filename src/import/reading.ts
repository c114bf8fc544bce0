import type { Separator } from '../tables/csv-layout.ts';
import type { Letters } from '../tables/decode-text.ts';
import type { DecimalMark } from '../tables/number-policy.ts';
import type { Quote } from './cut-piece.ts';
import type { FileHead } from './file-heads.ts';
import type { MarkQuestion } from './find-marks.ts';
import { type Frame, KINDS, type RecordKind } from './frame.ts';
import type { PackedRecords } from './packed-records.ts';

/** What the reader may set by hand; what is left out is found from the file. */
export interface ReadChoices {
  readonly letters?: Letters;
  readonly separator?: Separator;
  readonly quote?: Quote;
  readonly decimal?: DecimalMark;
  /** Record of the first header line, from 0, and how many lines the header has. */
  readonly head?: { readonly at: number; readonly rows: 0 | 1 | 2 };
  /** Records from this one on are the foot of the file, set aside as notes; null: there is none. */
  readonly footFrom?: number | null;
}

/** Something found or chosen, with the reason in a few words. */
export interface Found<Value> {
  readonly value: Value;
  readonly by: 'file' | 'reader';
  readonly reason: string;
}

/** Something about the whole file or one line that the reader should know; nothing was left out for it. */
export interface ReadingRemark {
  /** Line of the file, from 1; null: the whole file. */
  readonly line: number | null;
  readonly sentence: string;
}

/** A file read as a table of text: what was found, and every record with its line and its kind. */
export interface Reading {
  readonly letters: Found<Letters>;
  readonly separator: Found<Separator>;
  readonly quote: Found<Quote>;
  /** null: no figure tells it. */
  readonly decimal: Found<DecimalMark | null>;
  readonly frame: Found<Frame>;
  readonly decimalByColumn: readonly (DecimalMark | null)[];
  readonly question: MarkQuestion | null;
  readonly heads: readonly FileHead[];
  readonly records: PackedRecords;
  /** Line of the file, from 1, on which each record begins. */
  readonly lines: Uint32Array;
  /** Code of KINDS of each record. */
  readonly kinds: Uint8Array;
  /** First record below the header. */
  readonly bodyFrom: number;
  readonly blankLines: number;
  readonly remarks: readonly ReadingRemark[];
  /** The same for every file of this supplier with this header: choices are remembered under it. */
  readonly headerKey: string;
}

export function kindOfRecord(reading: Reading, record: number): RecordKind {
  return KINDS[reading.kinds[record]!]!;
}

/**
 * A record as text, its fields parted and quoted as in the file.
 *
 * @example rawText(reading, 4) // 'NG-1104;Rear tyre;POA'
 */
export function rawText(reading: Reading, record: number): string {
  const { value: separator } = reading.separator;
  const fields = reading.records.at(record);
  return fields
    .map((field) =>
      field.includes(separator) || /["\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field,
    )
    .join(separator);
}
