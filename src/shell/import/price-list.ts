import { type ConfirmedFit, confirmFit, type PartFits, type PossibleFit } from '../../import/fit-parts.ts';
import type { ImportClient } from '../../import/import-client.ts';
import type { FoundRow, RowsSummary } from '../../import/import-session.ts';
import { columnsOf, type Match, type MatchChoices, rememberMatch } from '../../import/match-columns.ts';
import { AS_ROW } from '../../import/mends.ts';
import { partKey } from '../../import/part-key.ts';
import type { AsideRow, PriceRow } from '../../import/price-row.ts';
import { rowKey } from '../../import/quantity-scale.ts';
import type { Role } from '../../import/roles.ts';
import type { Entry, NotebookDocument } from '../../notebook/document.ts';
import type { Edit, RowEntries } from '../../notebook/edit.ts';
import { readMemory, remember } from './import-memory.ts';
import { fitsThere, offersThere, suppliersThere, wantedParts } from './offers-there.ts';
import { type ChosenRow, fieldsOf, priceEdit } from './price-edit.ts';
import { type PriceField, type PriceTarget, priceTargetOf } from './price-target.ts';
import { dayWords } from './source-note.ts';
import { guessSupplier } from './supplier-guess.ts';

/** Supplier choice: each row's own, as its column says. */
export const BY_ROW = '\u0000by row';
/** Rows set aside that are shown and can be mended; the rest can be saved. */
export const MOST_ASIDE = 200;
const NUMBERS_LOOKED_AT = 2000;
const MENDED_ROLES = { price: 'price', name: 'description', row: AS_ROW } as const;
/** Rows that come over from the worker at once. */
const ROWS_A_PAGE = 2000;

/** What is mended of a record that was set aside: its price, its name, or that it is a row at all. */
export type Mended = keyof typeof MENDED_ROLES;

/** A row that the rider may take for a part. */
export interface Candidate extends PossibleFit {
  readonly offer: PriceRow;
}

/** From this score on a row has most of a part's words, and may be taken together with the others. */
const LIKELY = 0.6;

/** Is a row more than a guess from one word of several? */
export const isLikely = ({ score }: PossibleFit): boolean => score >= LIKELY;

/** A part of the notebook and what the file has for it. */
export interface PartLine {
  readonly part: string;
  /** Confirmed ones; more than one where the supplier has several for the part. */
  readonly taken: readonly PriceRow[];
  /** The best that is not confirmed; null when there is none. */
  readonly proposed: Candidate | null;
  readonly candidates: readonly Candidate[];
}

/**
 * A file as a supplier's price list: its columns matched, its rows read and fitted to the notebook's parts.
 * Whatever changes is worked out by the reader in its worker; the notebook is only read.
 */
export class PriceList {
  readonly fileName: string;
  readonly #client: ImportClient;
  readonly #headerKey: string;
  target: PriceTarget;
  match: Match | null = null;
  counts: RowsSummary | null = null;
  aside: readonly AsideRow[] = [];
  pieces: number | null = null;
  /** '' until it is known or chosen. */
  supplier = '';
  supplierReason = '';
  /** All rows come in, those that fit no part as well. */
  isAll = false;
  /** Freight, lead time and the like of a new supplier, by the id of their column. */
  terms: RowEntries = {};
  /** Why a term cannot be read, by the id of its column. */
  readonly termTroubles = new Map<string, string>();
  #choices: MatchChoices = {};
  #everything: readonly PriceRow[] = [];
  #fits: readonly PartFits[] = [];
  #rows: Readonly<Record<number, PriceRow>> = {};
  readonly #taken = new Map<number, { readonly row: PriceRow; readonly part: string }>();
  /** Records that the rider has left out by hand, and so are not taken again when rows are fitted anew. */
  readonly #left = new Set<number>();

  constructor(client: ImportClient, target: PriceTarget, fileName: string, headerKey: string) {
    this.#client = client;
    this.target = target;
    this.fileName = fileName;
    this.#headerKey = headerKey;
  }

  /** Reads the file as it is matched now; `document` gives the parts. */
  async read(document: NotebookDocument): Promise<void> {
    this.match = await this.#client.call('proposeMatch', [this.#choices, readMemory().matches]);
    const options = this.pieces === null ? {} : { pieces: this.pieces };
    this.#count(await this.#client.call('readRows', [this.match, options]));
    await this.#afterRows(document);
  }

  #count(counts: RowsSummary): void {
    this.counts = counts;
  }

  async #afterRows(document: NotebookDocument): Promise<void> {
    this.aside = await this.#client.call('asidePage', [0, MOST_ASIDE]);
    if (this.supplier === '') await this.#guessSupplier();
    if (this.isAll) await this.takeAll(true);
    await this.fit(document);
  }

  async #guessSupplier(): Promise<void> {
    const known = readMemory().suppliers.find(([key]) => key === this.#headerKey)?.[1];
    const rows = await this.#client.call('takenPage', [0, NUMBERS_LOOKED_AT]);
    const hasColumn = this.match !== null && columnsOf(this.match, 'supplier').length > 0;
    if (hasColumn && rows.some(({ supplier }) => supplier !== null)) {
      const names = new Set(rows.map(({ supplier }) => supplier));
      this.supplier = names.size === 1 ? [...names][0]! : BY_ROW;
      this.supplierReason = 'found in file';
      return;
    }
    const numbers = rows.flatMap(({ partNumber }) => (partNumber === null ? [] : [partNumber]));
    const suppliers = suppliersThere(this.target);
    const guess = guessSupplier(this.fileName, numbers, offersThere(this.target), suppliers);
    this.supplier = guess?.supplier ?? known ?? '';
    this.supplierReason = guess?.reason ?? (known === undefined ? '' : 'as last time');
  }

  /** Fits the rows to the parts anew; what the rider has taken or left by hand stays so. */
  async fit(document: NotebookDocument): Promise<void> {
    const { fits, rows } = await this.#client.call('fit', [
      wantedParts(document, this.target),
      { supplier: this.supplier, confirmed: this.#confirmed() },
    ]);
    this.#fits = fits;
    this.#rows = rows;
    for (const { part, fits: found } of fits) {
      for (const { row: at, by } of found) {
        const row = rows[at]!;
        if (by === 'words' || this.#taken.has(row.record) || this.#left.has(row.record)) continue;
        this.#taken.set(row.record, { row, part });
      }
    }
    await this.#refreshTaken();
  }

  /** Rows read again have other prices: what is taken is taken as it is now, and what is no row goes. */
  async #refreshTaken(): Promise<void> {
    const now = await this.#client.call('rowsOf', [[...this.#taken.keys()]]);
    const byRecord = new Map(now.map((row) => [row.record, row]));
    for (const [record, { part }] of this.#taken) {
      const row = byRecord.get(record);
      if (row) this.#taken.set(record, { row, part });
      else this.#taken.delete(record);
    }
  }

  #confirmed(): readonly ConfirmedFit[] {
    const offers = fitsThere(this.target, this.supplier);
    const there = new Set(offers.map(({ offer }) => offer));
    return [...offers, ...readMemory().fits.filter(({ offer }) => !there.has(offer))];
  }

  /** The parts with what is taken or proposed for each, in the notebook's order. */
  get lines(): readonly PartLine[] {
    const proposedOnce = new Set<number>();
    return this.#fits.map(({ part, fits }) => {
      const taken = [...this.#taken.values()].filter((one) => one.part === part).map(({ row }) => row);
      const candidates = fits
        .map((fit): Candidate => ({ ...fit, offer: this.#rows[fit.row]! }))
        .filter(({ offer }) => !taken.some(({ record }) => record === offer.record));
      const free = candidates.find(
        ({ offer }) => !this.#taken.has(offer.record) && !proposedOnce.has(offer.record),
      );
      const proposed = taken.length > 0 ? null : (free ?? null);
      if (proposed) proposedOnce.add(proposed.offer.record);
      return { part, taken, proposed, candidates };
    });
  }

  /** Part that a record is taken for; null when it is not. */
  partOf(record: number): string | null {
    return this.#taken.get(record)?.part ?? null;
  }

  take(row: PriceRow, part: string): void {
    this.#left.delete(row.record);
    this.#taken.set(row.record, { row, part });
  }

  leave(record: number): void {
    this.#left.add(record);
    this.#taken.delete(record);
  }

  takeProposed(): void {
    for (const { part, proposed } of this.lines)
      if (proposed && isLikely(proposed)) this.take(proposed.offer, part);
  }

  async takeAll(isAll: boolean): Promise<void> {
    this.isAll = isAll;
    const { taken = 0, remarked = 0 } = this.counts ?? {};
    const rows: PriceRow[] = [];
    // Page by page: a hundred thousand rows at once would hold up the page that receives them.
    for (let from = 0; isAll && from < taken + remarked; from += ROWS_A_PAGE) {
      rows.push(...(await this.#client.call('takenPage', [from, ROWS_A_PAGE])));
    }
    this.#everything = rows;
  }

  find(words: string): Promise<readonly FoundRow[]> {
    return this.#client.call('find', [words, 12]);
  }

  setRole(column: number, role: Role): void {
    const roles = { ...this.#choices.roles, [column]: role };
    // Only the description may stand in several columns: another column gives the role up.
    for (const { column: other, role: held } of this.match?.columns ?? [])
      if (other !== column && held === role && role !== 'ignore' && role !== 'description')
        roles[other] = 'ignore';
    this.#choices = { ...this.#choices, roles };
  }

  setCurrency(currency: string): void {
    this.#choices = { ...this.#choices, currency };
  }

  /** Takes a term of a new supplier, or leaves it open with the reason why it cannot be read. */
  setTerm(columnId: string, entry: Entry, trouble: string): void {
    this.terms = { ...this.terms, [columnId]: entry };
    if (trouble === '') this.termTroubles.delete(columnId);
    else this.termTroubles.set(columnId, trouble);
  }

  setSupplier(supplier: string): void {
    this.terms = {};
    this.termTroubles.clear();
    this.supplier = supplier;
    this.supplierReason = 'set by hand';
    this.#taken.clear();
    this.#left.clear();
  }

  setColumn(field: PriceField, id: string | null): void {
    this.target = priceTargetOf(this.target.cell, { ...this.target.columns, [field]: id });
  }

  /**
   * Sets the price or the description of a record that was set aside, or takes it as a row; returns why it cannot
   * be taken, or ''.
   */
  async mend(document: NotebookDocument, row: AsideRow, what: Mended, text: string): Promise<string> {
    const role = MENDED_ROLES[what];
    if (this.match === null || (role !== AS_ROW && columnsOf(this.match, role).length === 0))
      return `No column of the file is its ${role}: choose one above first.`;
    const read = await this.#client.call('mend', [row.record, role, text]);
    if ('refusal' in read) return read.refusal;
    this.#count(read);
    await this.#afterRows(document);
    return '';
  }

  asideCsv(): Promise<string> {
    return this.#client.call('asideCsv', []);
  }

  /** The rows that are to come in. */
  get chosen(): readonly ChosenRow[] {
    const rows: readonly { row: PriceRow; part: string }[] = this.isAll
      ? this.#everything.map((row) => ({ row, part: this.partOf(row.record) ?? row.fits ?? '' }))
      : [...this.#taken.values()].sort((a, b) => a.row.record - b.row.record);
    return rows.flatMap(({ row, part }) => {
      const supplier = this.supplier === BY_ROW ? (row.supplier ?? '') : this.supplier;
      return supplier === '' ? [] : [{ row, part, supplier }];
    });
  }

  /** Rows that are taken, whether or not the supplier is known yet. */
  get takenCount(): number {
    return this.isAll ? this.#everything.length : this.#taken.size;
  }

  /** Keys of all rows that were found for a part, taken or not. */
  get foundKeys(): ReadonlySet<string> {
    return new Set(Object.values(this.#rows).map(rowKey));
  }

  /** Whether one of the rows set aside (of those that are shown) has this part number or description. */
  isSetAside(name: string): boolean {
    const key = partKey(name);
    return key !== '' && this.aside.some(({ raw }) => partKey(raw).includes(key));
  }

  /** The suppliers whose earlier rows give way. */
  get suppliers(): readonly string[] {
    return this.supplier === BY_ROW
      ? [...new Set(this.chosen.map(({ supplier }) => supplier))]
      : [this.supplier].filter((name) => name !== '');
  }

  /** Why nothing can be brought in yet, as a sentence; '' when it can. */
  obstacle(document: NotebookDocument): string {
    if (this.supplier === '') return 'Say whose prices these are: choose one under Supplier.';
    const question = this.match?.questions.find(({ kind }) => kind !== 'price-column');
    if (question) return question.sentence;
    if (this.takenCount === 0) return 'No row is taken yet: confirm the rows that fit your parts.';
    // Whether there is a rate is the same for all rows of a supplier in one money.
    const housed = new Set<string>();
    const homeless = this.chosen.find((one) => {
      const key = `${one.supplier}\n${one.row.currency}`;
      if (housed.has(key)) return false;
      housed.add(key);
      return fieldsOf(document, this.target, one).price === null;
    });
    if (homeless === undefined) return '';
    const { row, supplier } = homeless;
    return `Line ${row.line} is priced in ${row.currency}, ${supplier} is kept in another currency, and the notebook has no rate between them. Add ${row.currency} to its rates of exchange, or set the currency of the file.`;
  }

  edit(document: NotebookDocument, at: Date): Edit {
    const { fileName, suppliers, chosen, terms } = this;
    return priceEdit(document, this.target, { fileName, suppliers, chosen, terms, date: dayWords(at) });
  }

  /** Keeps what the rider has confirmed for the next file of this supplier. */
  remember(): void {
    const fits = [...this.#taken.values()].map(({ row, part }) =>
      confirmFit(this.supplier === BY_ROW ? (row.supplier ?? '') : this.supplier, part, row),
    );
    const isOne = this.supplier !== BY_ROW;
    remember(this.match && rememberMatch(this.match), isOne ? this.supplier : '', fits);
  }
}
