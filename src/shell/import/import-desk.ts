import { collectBytes } from '../../import/collect-bytes.ts';
import type { PreviewRecord, ReadingSummary } from '../../import/import-session.ts';
import type { Progress } from '../../import/in-steps.ts';
import type { ReadChoices } from '../../import/reading.ts';
import type { TableCell } from '../../notebook/document.ts';
import type { Edit } from '../../notebook/edit.ts';
import { EditError } from '../../notebook/edit-error.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';
import { findCell, isEntered } from '../../notebook/lookup.ts';
import type { ImportEffect } from './import-effect.ts';
import { EffectDesk, FileReaderDesk, readGpxAside } from './import-workers.ts';
import { isGpx } from './is-gpx.ts';
import { likeliestTable } from './likeliest-table.ts';
import { PriceList } from './price-list.ts';
import { priceTargets } from './price-target.ts';
import { TableList } from './table-list.ts';

/** Rows of the file that are shown at once. */
export const PREVIEW_ROWS = 8;
const EFFECT_AFTER_MS = 250;

/** What is brought in: a file, or text that was pasted. */
export type ImportSource = File | { readonly name: string; readonly text: string };

export interface ImportFile {
  readonly name: string;
  readonly bytes: number;
  readonly at: Date;
  /** Tracks and routes, when it is a GPX file. */
  readonly ways: readonly string[];
  readonly way: number;
  /** Sentences about the file as a whole. */
  readonly remarks: readonly string[];
}

/** How far the desk is: nothing chosen, being read, refused with a sentence, or read. */
export type ImportPhase = 'empty' | 'reading' | 'refused' | 'ready';

/**
 * One import from the file to the edit, without a screen of its own: it reads in workers, tells its dialog when
 * something has changed, and edits the notebook only by `accept`.
 */
export class ImportDesk {
  readonly notebook: LiveNotebook;
  phase: ImportPhase = 'empty';
  refusal = '';
  /** Whether the file that was refused can be read with quotes as ordinary signs. */
  plainQuotesMend = false;
  progress: Progress | null = null;
  file: ImportFile | null = null;
  summary: ReadingSummary | null = null;
  list: PriceList | TableList | null = null;
  preview: readonly PreviewRecord[] = [];
  effect: ImportEffect | null = null;
  /** Why the rows cannot come in as they are; '' when they can. */
  trouble = '';
  readonly #changed: () => void;
  readonly #effects = new EffectDesk();
  #reader: FileReaderDesk | null = null;
  #stop = new AbortController();
  #last: Promise<void> = Promise.resolve();
  #effectLater: ReturnType<typeof setTimeout> | undefined;
  #source: ImportSource | null = null;
  #gpxText = '';
  #choices: ReadChoices = {};
  #previewFrom = 0;

  constructor(notebook: LiveNotebook, changed: () => void) {
    this.notebook = notebook;
    this.#changed = changed;
  }

  /** Reads a file, or a pasted text under a name; what was open before is put away. */
  open(source: ImportSource, choices: ReadChoices = {}): Promise<void> {
    this.#putAway();
    this.#source = source;
    this.#choices = choices;
    this.phase = 'reading';
    const { signal } = this.#stop;
    const size = source instanceof File ? source.size : source.text.length;
    this.file = { name: source.name, bytes: size, at: new Date(), ways: [], way: 0, remarks: [] };
    return this.#work(async () => {
      const read =
        source instanceof File
          ? await collectBytes(source.stream() as unknown as AsyncIterable<Uint8Array>, { signal })
          : new TextEncoder().encode(source.text);
      if ('refusal' in read) this.#refuse(read.refusal);
      else await this.#openBytes(read, signal);
    });
  }

  /** Opens the file that was refused once more, its quotes taken as signs like any other. */
  openWithPlainQuotes(): Promise<void> {
    return this.#source ? this.open(this.#source, { quote: 'none' }) : Promise.resolve();
  }

  async #openBytes(bytes: Uint8Array, signal: AbortSignal): Promise<void> {
    const start = new TextDecoder().decode(bytes.subarray(0, 2000));
    if (isGpx(start)) {
      this.#gpxText = new TextDecoder().decode(bytes);
      return this.#openWay(0, signal);
    }
    await this.#read(bytes, signal);
  }

  async #openWay(way: number, signal: AbortSignal): Promise<void> {
    const table = await readGpxAside(this.#gpxText, way, signal);
    if ('refusal' in table) return this.#refuse(table.refusal);
    this.file = { ...this.file!, ways: table.ways, way, remarks: table.remarks };
    await this.#read(new TextEncoder().encode(table.csv), signal);
  }

  async #read(bytes: Uint8Array, signal: AbortSignal): Promise<void> {
    this.#reader ??= new FileReaderDesk();
    const options = { signal, onProgress: this.#onProgress };
    const opened = await this.#reader.client.open(bytes, this.#choices, options);
    if ('refusal' in opened) {
      this.plainQuotesMend = opened.mend === 'plain-quotes';
      return this.#refuse(opened.refusal);
    }
    this.summary = opened;
    this.#previewFrom = opened.bodyFrom;
    this.phase = 'ready';
    await this.#choose(await this.#likeliest());
  }

  readonly #onProgress = (progress: Progress): void => {
    this.progress = progress;
    this.#changed();
  };

  async #likeliest(): Promise<TableCell | null> {
    const { client } = this.#reader!;
    const { document } = this.notebook;
    const prices = priceTargets(document)[0]?.cell ?? null;
    const proposed = await client.call('proposeMatch', []);
    const isPriced = !proposed.questions.some(({ kind }) => kind === 'no-price-column');
    if (prices && isPriced) {
      const strong = proposed.columns.find(({ role }) => role === 'price');
      if (strong && strong.score >= 0.6) return prices;
    }
    return (await likeliestTable(client, document)) ?? prices ?? this.tables[0] ?? null;
  }

  /** The tables that a file can go into. */
  get tables(): readonly TableCell[] {
    return this.notebook.document.cells.filter(
      (cell): cell is TableCell => cell.kind === 'table' && cell.columns.some(isEntered),
    );
  }

  /** Has the file go into another table. */
  chooseTable(cellId: string): Promise<void> {
    const cell = findCell(this.notebook.document, cellId);
    return this.#work(() => this.#choose(cell?.kind === 'table' ? cell : null));
  }

  async #choose(cell: TableCell | null): Promise<void> {
    if (cell === null)
      return this.#refuse('The notebook has no table with columns to fill. Add a table first.');
    const { client } = this.#reader!;
    const target = priceTargets(this.notebook.document).find((one) => one.cell.id === cell.id);
    const { name } = this.file!;
    this.list = target
      ? new PriceList(client, target, name, this.summary!.headerKey)
      : new TableList(client, cell, name);
    await this.#readRows();
  }

  async #readRows(): Promise<void> {
    await this.list?.read(this.notebook.document);
    await this.#loadPreview();
  }

  async #loadPreview(): Promise<void> {
    this.preview = await this.#reader!.client.call('preview', [this.#previewFrom, PREVIEW_ROWS]);
  }

  turnPreview(rows: number): Promise<void> {
    const { bodyFrom, recordCount } = this.summary!;
    const at = Math.max(bodyFrom, Math.min(recordCount - 1, this.#previewFrom + rows));
    this.#previewFrom = bodyFrom + Math.floor((at - bodyFrom) / PREVIEW_ROWS) * PREVIEW_ROWS;
    return this.#work(() => this.#loadPreview());
  }

  get previewFrom(): number {
    return this.#previewFrom;
  }

  /** Reads the same file another way; on a refusal the reading stays and the sentence is shown. */
  rechoose(choices: ReadChoices): Promise<void> {
    const { signal } = this.#stop;
    return this.#work(async () => {
      const wanted = { ...this.#choices, ...choices };
      const options = { signal, onProgress: this.#onProgress };
      const read = await this.#reader!.client.call('rechoose', [wanted], options);
      if ('refusal' in read) {
        this.trouble = read.refusal;
        return;
      }
      this.#choices = wanted;
      this.summary = read;
      this.#previewFrom = read.bodyFrom;
      await this.#readRows();
    });
  }

  chooseWay(way: number): Promise<void> {
    return this.#work(() => this.#openWay(way, this.#stop.signal));
  }

  /** Changes the list by `change`, reads its rows again where `again` says so, and tells what comes of it. */
  change(change: () => void | Promise<void>, again: 'rows' | 'fit' | 'nothing' = 'nothing'): Promise<void> {
    return this.#work(async () => {
      await change();
      if (again === 'rows') await this.#readRows();
      if (again === 'fit' && this.list instanceof PriceList) await this.list.fit(this.notebook.document);
    });
  }

  /** One thing after another; the dialog is told before and after. */
  #work(task: () => Promise<void>): Promise<void> {
    const { signal } = this.#stop;
    this.#last = this.#last.then(async () => {
      if (signal.aborted) return;
      this.trouble = '';
      this.#changed();
      try {
        await task();
      } catch (error) {
        if (signal.aborted) return;
        this.#refuse(error instanceof Error ? error.message : String(error));
      }
      this.progress = null;
      this.#changed();
      this.#askEffect();
    });
    return this.#last;
  }

  #refuse(sentence: string): void {
    this.phase = 'refused';
    this.refusal = sentence;
  }

  /** Why the rows cannot come in yet; '' when they can. */
  get obstacle(): string {
    const { document } = this.notebook;
    if (this.list instanceof PriceList)
      return this.summary?.question?.sentence ?? this.list.obstacle(document);
    return this.list?.obstacle() ?? '';
  }

  /** Rows that would come in now. */
  get count(): number {
    return this.list instanceof PriceList ? this.list.takenCount : (this.list?.rows?.rows ?? 0);
  }

  #edit(): Edit | null {
    if (this.phase !== 'ready' || this.list === null || this.obstacle !== '' || this.file === null)
      return null;
    return this.list.edit(this.notebook.document, this.file.at);
  }

  /** What would come of it is worked out once the hand rests. */
  #askEffect(): void {
    clearTimeout(this.#effectLater);
    this.effect = null;
    this.#effectLater = setTimeout(() => void this.#tryEffect(), EFFECT_AFTER_MS);
  }

  async #tryEffect(): Promise<void> {
    try {
      const edit = this.#edit();
      const effect = edit && (await this.#effects.ask(this.notebook.document, edit));
      if (edit && effect === null) return;
      this.effect = effect;
    } catch (error) {
      this.trouble = error instanceof Error ? error.message : String(error);
    }
    this.#changed();
  }

  /** Brings the rows in as one edit; false, with the reason in `trouble`, when they do not fit. */
  accept(): boolean {
    try {
      const edit = this.#edit();
      if (edit === null) return false;
      this.notebook.apply(edit);
    } catch (error) {
      if (!(error instanceof EditError)) throw error;
      this.trouble = error.message;
      this.#changed();
      return false;
    }
    if (this.list instanceof PriceList) this.list.remember();
    return true;
  }

  /** Ends what runs and puts the file away. */
  stop(): void {
    this.#putAway();
    this.#changed();
  }

  #putAway(): void {
    this.#stop.abort();
    this.#stop = new AbortController();
    clearTimeout(this.#effectLater);
    this.#reader?.dispose();
    this.#reader = null;
    // What still waits for the reader that was ended is settled by now, or never matters again.
    this.#last = Promise.resolve();
    this.phase = 'empty';
    this.refusal = '';
    this.plainQuotesMend = false;
    this.trouble = '';
    this.progress = null;
    this.file = null;
    this.summary = null;
    this.list = null;
    this.effect = null;
    this.#choices = {};
  }

  dispose(): void {
    this.#putAway();
    this.#effects.dispose();
  }
}
