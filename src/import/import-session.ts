import { type AsideLine, asideCsv } from './aside-csv.ts';
import { compareLists, type ListComparison, type ListedOffer } from './compare-lists.ts';
import { type FitOptions, fitParts, type PartFits, type WantedPart } from './fit-parts.ts';
import { KINDS, type RecordKind } from './frame.ts';
import { finish, type Steps } from './in-steps.ts';
import {
  columnsOf,
  type Match,
  type MatchChoices,
  matchColumns,
  type RememberedMatch,
} from './match-columns.ts';
import { matchTable, type TableChoices, type TableMatch, type WantedColumn } from './match-table.ts';
import { priceMendPlaces, tableMendPlaces } from './mend-places.ts';
import { AS_ROW, addMend, applyMends, type LostMend, type Mend, type MendRole } from './mends.ts';
import type { AsideRow, PriceRow } from './price-row.ts';
import type { PriceRows } from './price-rows.ts';
import { readSteps } from './read-file.ts';
import { type FoundRows, type RowOptions, rowSteps } from './read-rows.ts';
import { type ReadTable, readTable } from './read-table.ts';
import type { ReadChoices, Reading } from './reading.ts';
import { Search } from './search.ts';
import { searchTextOfRecords } from './search-text.ts';
import type { Refusal } from './split-records.ts';

/** A record for the preview. */
export interface PreviewRecord {
  readonly record: number;
  readonly line: number;
  readonly kind: RecordKind;
  readonly fields: readonly string[];
}

/** What was found in a file, without its rows. */
export type ReadingSummary = Omit<Reading, 'records' | 'lines' | 'kinds'> & {
  readonly recordCount: number;
  readonly bytes: number;
};

export interface RowsSummary {
  readonly match: Match;
  readonly taken: number;
  readonly remarked: number;
  readonly aside: number;
  /** Rows set aside by reason. */
  readonly asideByReason: Readonly<Record<string, number>>;
  /** What was typed in place and does not hold for the file as it is read now. */
  readonly lostMends: readonly LostMend[];
}

export interface FoundRow {
  readonly row: PriceRow;
  readonly score: number;
}

/** Longest field in a preview, in signs. */
const SHOWN = 300;

/**
 * One file on its way in, held where it is read (a worker), so that only what is shown crosses over to the
 * page. Every answer is plain data. Nothing here touches a notebook.
 */
export class ImportSession {
  private readonly bytes: Uint8Array;
  private choices: ReadChoices;
  private reading: Reading;
  /** The reading with what was typed in place. */
  private mended: Reading;
  private mends: readonly Mend[] = [];
  /** Of tables other than price lists. */
  private tableMends: readonly Mend[] = [];
  /** What the last reading of rows set aside. */
  private aside: readonly AsideLine[] = [];
  private match: Match | null = null;
  private options: RowOptions = {};
  private found: FoundRows | null = null;
  private search: Search | null = null;

  private constructor(bytes: Uint8Array, choices: ReadChoices, reading: Reading) {
    this.bytes = bytes;
    this.choices = choices;
    this.reading = reading;
    this.mended = reading;
  }

  private get rows(): PriceRows | null {
    return this.found?.rows ?? null;
  }

  static *open(bytes: Uint8Array, choices: ReadChoices = {}): Steps<ImportSession | Refusal> {
    const reading = yield* readSteps(bytes, choices);
    return 'refusal' in reading ? reading : new ImportSession(bytes, choices, reading);
  }

  summary(): ReadingSummary {
    const { records, lines: _lines, kinds: _kinds, ...rest } = this.reading;
    return { ...rest, recordCount: records.length, bytes: this.bytes.length };
  }

  /** Reads the same bytes another way; on a refusal the reading stays as it was. */
  *rechoose(choices: ReadChoices): Steps<ReadingSummary | Refusal> {
    const reading = yield* readSteps(this.bytes, choices);
    if ('refusal' in reading) return reading;
    this.choices = choices;
    this.reading = reading;
    this.mended = reading;
    this.match = null;
    this.found = null;
    this.search = null;
    this.aside = [];
    return this.summary();
  }

  /** The choices that the present reading was made with. */
  currentChoices(): ReadChoices {
    return this.choices;
  }

  preview(from: number, count: number): readonly PreviewRecord[] {
    const { records, lines, kinds } = this.mended;
    const start = Math.max(0, from);
    const length = Math.max(0, Math.min(count, records.length - start));
    return Array.from({ length }, (_, at) => ({
      record: start + at,
      line: lines[start + at]!,
      kind: KINDS[kinds[start + at]!]!,
      fields: records
        .at(start + at)
        .map((field) => (field.length > SHOWN ? `${field.slice(0, SHOWN)}…` : field)),
    }));
  }

  proposeMatch(choices: MatchChoices = {}, remembered: readonly RememberedMatch[] = []): Match {
    return matchColumns(this.reading, choices, remembered);
  }

  /** Reads the rows as matched and makes them searchable. */
  *readRows(match: Match, options: RowOptions = {}): Steps<RowsSummary> {
    const { reading, lost } = applyMends(this.reading, priceMendPlaces(match), this.mends);
    const found = yield* rowSteps(reading, match, options);
    const number = columnsOf(match, 'part_number')[0] ?? -1;
    const words = [...columnsOf(match, 'description'), ...columnsOf(match, 'fits')];
    const searchText = searchTextOfRecords(reading.records, found.rows, number, words);
    this.mended = reading;
    this.match = match;
    this.options = options;
    this.found = found;
    this.search = new Search(searchText);
    this.aside = found.aside;
    const asideByReason: Record<string, number> = {};
    for (const { reason } of found.aside) asideByReason[reason] = (asideByReason[reason] ?? 0) + 1;
    const remarked = found.rows.remarkedCount;
    return {
      match,
      taken: found.rows.length - remarked,
      remarked,
      aside: found.aside.length,
      asideByReason,
      lostMends: lost,
    };
  }

  takenPage(from: number, count: number): readonly PriceRow[] {
    return this.found?.rows.page(from, count) ?? [];
  }

  remarkedPage(from: number, count: number): readonly PriceRow[] {
    const { rows } = this;
    const page: PriceRow[] = [];
    let before = 0;
    for (let row = 0; rows !== null && row < rows.length && page.length < count; row += 1) {
      if (!rows.isRemarked(row)) continue;
      if (before >= from) page.push(rows.at(row)!);
      before += 1;
    }
    return page;
  }

  asidePage(from: number, count: number): readonly AsideRow[] {
    return this.found?.aside.slice(from, from + count) ?? [];
  }

  /** Rows by their records, for those that the rider has chosen. */
  rowsOf(records: readonly number[]): readonly PriceRow[] {
    const { rows } = this;
    const wanted = new Set(records);
    const found: PriceRow[] = [];
    for (let row = 0; rows !== null && row < rows.length && found.length < wanted.size; row += 1) {
      if (wanted.has(rows.recordOf(row))) found.push(rows.at(row)!);
    }
    return found;
  }

  find(words: string, limit: number): readonly FoundRow[] {
    const { rows } = this;
    const hits = this.search?.find(words, limit) ?? [];
    return rows === null ? [] : hits.map(({ row, score }) => ({ row: rows.at(row)!, score }));
  }

  /** Fits to the notebook's parts, with the rows that are proposed. */
  fit(
    parts: readonly WantedPart[],
    options: Omit<FitOptions, 'search'> = {},
  ): { readonly fits: readonly PartFits[]; readonly rows: Readonly<Record<number, PriceRow>> } {
    const { rows: list, search } = this;
    if (list === null || search === null) return { fits: [], rows: {} };
    const fits = fitParts(list, parts, { ...options, search });
    const rows: Record<number, PriceRow> = {};
    for (const { fits: found } of fits) for (const { row } of found) rows[row] = list.at(row)!;
    return { fits, rows };
  }

  /**
   * Sets one field of a record anew, or takes the record as a row (AS_ROW), and reads the rows again. It stays
   * when the file is read another way.
   */
  *mend(record: number, role: MendRole | typeof AS_ROW, text: string): Steps<RowsSummary | Refusal> {
    if (this.match === null) return { refusal: 'The columns of the file are not matched yet.' };
    this.mends = addMend(this.mends, this.reading, record, { field: role, text });
    return yield* this.readRows(this.match, this.options);
  }

  /** What was set aside when the rows were last read. */
  asideCsv(): string {
    return asideCsv(this.mended, this.aside);
  }

  /** The rows against those of an earlier file of the same supplier. */
  compare(before: readonly ListedOffer[]): ListComparison<ListedOffer> {
    return compareLists(before, [...(this.rows ?? [])]);
  }

  matchTable(wanted: readonly WantedColumn[], choices: TableChoices = {}): TableMatch {
    return matchTable(this.reading, wanted, choices);
  }

  /** Reads the rows of a table, with what was typed for it in place. */
  readTable(match: TableMatch): ReadTable & { readonly lostMends: readonly LostMend[] } {
    // What was typed for another table waits until the file goes into that one again.
    const names = new Set([AS_ROW, ...match.wanted.map(({ name }) => name)]);
    const mends = this.tableMends.filter(({ field }) => names.has(field));
    const { reading, lost } = applyMends(this.reading, tableMendPlaces(match), mends);
    const table = readTable(reading, match);
    this.mended = reading;
    this.aside = table.aside;
    return { ...table, lostMends: lost };
  }

  /** Takes a record as a row of a table, with fields typed anew by the names of the table's columns. */
  mendTable(record: number, fields: Readonly<Record<string, string>>): void {
    for (const [field, text] of [[AS_ROW, ''] as const, ...Object.entries(fields)]) {
      this.tableMends = addMend(this.tableMends, this.reading, record, { field, text });
    }
  }
}

/** Opens a session at once, without pauses: for small files and tests. */
export function openSession(bytes: Uint8Array, choices: ReadChoices = {}): ImportSession | Refusal {
  return finish(ImportSession.open(bytes, choices));
}
