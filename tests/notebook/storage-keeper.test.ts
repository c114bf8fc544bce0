import { IDBFactory } from 'fake-indexeddb';
import { describe, expect, it, vi } from 'vitest';
import { applyEdit } from '../../src/notebook/apply-edit.ts';
import type { NotebookDocument } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import { addCell, entryEdit, notebookEdit } from '../../src/notebook/edits.ts';
import {
  Keeper,
  type KeeperOptions,
  type KeeperState,
  type OtherTab,
  type TabChannel,
} from '../../src/notebook/storage/keeper.ts';
import { type NotebookStore, openNotebookStore } from '../../src/notebook/storage/notebook-store.ts';
import { saveFailureWords } from '../../src/notebook/storage/save-failure.ts';
import { sampleNotebook } from './sample.ts';

type Listener = (change: { document: boolean; edit: Edit | null }) => void;

/** A live notebook without its graph. */
class Notebook {
  document: NotebookDocument = sampleNotebook();
  readonly listeners = new Set<Listener>();

  subscribe(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  apply(edit: Edit): void {
    this.become(applyEdit(this.document, edit), edit);
  }

  become(document: NotebookDocument, edit: Edit | null): void {
    this.document = document;
    for (const listener of this.listeners) listener({ document: true, edit });
  }

  title(after: string): void {
    this.apply(notebookEdit(this.document, 'title', after));
  }
}

/** Time that passes when the test says so. */
class Waits {
  readonly begun: { milliseconds: number; then: () => void; stopped: boolean }[] = [];

  readonly after = (milliseconds: number, then: () => void): (() => void) => {
    const wait = { milliseconds, then, stopped: false };
    this.begun.push(wait);
    return () => {
      wait.stopped = true;
    };
  };

  end(): void {
    this.begun.at(-1)!.then();
  }
}

/** Channels of tabs that hear one another at once. */
function channels(count: number): TabChannel[] {
  const all: TabChannel[] = [];
  for (let i = 0; i < count; i += 1) {
    const channel: TabChannel = {
      onmessage: null,
      close: () => undefined,
      postMessage: (data) => {
        for (const other of all) if (other !== channel) other.onmessage?.({ data } as MessageEvent);
      },
    };
    all.push(channel);
  }
  return all;
}

function keep(notebook: Notebook, store: KeeperOptions['store'], more: Partial<KeeperOptions> = {}): Keeper {
  return new Keeper(notebook, {
    store,
    stored: null,
    channel: null,
    now: () => new Date(Date.UTC(2026, 2, 14, 14, 2)),
    ...more,
  });
}

/** A store whose saves wait until the test lets them through. */
function heldStore(inner: NotebookStore): {
  store: KeeperOptions['store'];
  saves: { pass: () => void; fail: (error: unknown) => void; edits: readonly Edit[] }[];
} {
  const saves: { pass: () => void; fail: (error: unknown) => void; edits: readonly Edit[] }[] = [];
  const save: NotebookStore['save'] = (id, known, edits, whole) =>
    new Promise((resolve, reject) => {
      saves.push({
        edits,
        pass: () => inner.save(id, known, edits, whole).then(resolve, reject),
        fail: reject,
      });
    });
  return { store: { save, load: inner.load }, saves };
}

const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

describe('Keeper', () => {
  it('begins a save when the edit is painted, and at once when it is asked to keep all', async () => {
    const { store, saves } = heldStore(openNotebookStore(new IDBFactory()));
    const notebook = new Notebook();
    let paint: (() => void)[] = [];
    const painted = (): Promise<void> => new Promise((resolve) => paint.push(resolve));
    const keeper = keep(notebook, store, { stored: { revision: 0, savedAt: '' }, painted });
    notebook.title('Before the frame');
    await turn();
    expect(saves).toHaveLength(0);
    for (const resolve of paint) resolve();
    await turn();
    expect(saves).toHaveLength(1);
    saves[0]!.pass();
    await vi.waitUntil(() => keeper.state.kind === 'kept');
    paint = [];
    notebook.title('The page is left now');
    await turn();
    expect(saves).toHaveLength(1);
    const flushed = keeper.flush();
    await turn();
    expect(saves).toHaveLength(2);
    saves[1]!.pass();
    expect((await flushed).kind).toBe('kept');
    expect((await store.load(notebook.document.id))?.document.title).toBe('The page is left now');
    keeper.dispose();
  });

  it('saves a notebook that was never saved at once, and one that was only when it is edited', async () => {
    const store = openNotebookStore(new IDBFactory(), { now: () => new Date(Date.UTC(2026, 2, 14, 9)) });
    const notebook = new Notebook();
    const keeper = keep(notebook, store);
    expect(keeper.state).toEqual({ kind: 'keeping' });
    expect(await keeper.flush()).toEqual({ kind: 'kept', at: new Date('2026-03-14T09:00:00.000Z') });
    const save = vi.fn(store.save);
    const second = keep(notebook, { ...store, save }, { stored: (await store.load('plateau'))! });
    expect(second.state).toEqual({ kind: 'kept', at: new Date('2026-03-14T09:00:00.000Z') });
    await second.flush();
    expect(save).not.toHaveBeenCalled();
    notebook.title('Edited');
    expect(second.state).toEqual({ kind: 'keeping' });
    await second.flush();
    expect((await store.load('plateau'))?.document.title).toBe('Edited');
  });

  it('has one save under way at a time and puts what is edited meanwhile into the next', async () => {
    const inner = openNotebookStore(new IDBFactory());
    const { store, saves } = heldStore(inner);
    const notebook = new Notebook();
    const keeper = keep(notebook, store);
    const states: string[] = [];
    keeper.subscribe((state) => states.push(state.kind));
    notebook.title('A');
    await turn();
    expect(saves.map((save) => save.edits.length)).toEqual([1]);
    notebook.title('B');
    notebook.title('C');
    await turn();
    expect(saves).toHaveLength(1);
    saves[0]!.pass();
    await turn();
    await vi.waitFor(() => expect(saves.map((save) => save.edits.length)).toEqual([1, 2]));
    expect(keeper.state.kind).toBe('keeping');
    saves[1]!.pass();
    expect((await keeper.flush()).kind).toBe('kept');
    expect(states.at(-1)).toBe('kept');
    expect((await inner.load('plateau'))?.document).toEqual(notebook.document);
    expect((await inner.load('plateau'))?.revision).toBe(2);
  });

  it('shows a failed save, holds everything, tries again after 1, 2, 5, 15, 30, 30 s, and is kept in the end', async () => {
    const inner = openNotebookStore(new IDBFactory());
    const waits = new Waits();
    let failing = true;
    const save: NotebookStore['save'] = (...given) => (failing ? Promise.reject(null) : inner.save(...given));
    const notebook = new Notebook();
    const keeper = keep(notebook, { save, load: inner.load }, { after: waits.after });
    notebook.title('A');
    await turn();
    const failed = keeper.state as Extract<KeeperState, { kind: 'failed' }>;
    expect(failed).toEqual({
      kind: 'failed',
      since: new Date(Date.UTC(2026, 2, 14, 14, 2)),
      message:
        'Not kept: the browser could not write it. It will be tried again; save it as a file to be sure.',
    });
    for (let i = 0; i < 5; i += 1) {
      waits.end();
      notebook.title(`A${i}`);
      expect(keeper.state).toEqual(failed);
      await turn();
    }
    expect(waits.begun.map((wait) => wait.milliseconds / 1000)).toEqual([1, 2, 5, 15, 30, 30]);
    failing = false;
    waits.end();
    await vi.waitFor(() => expect(keeper.state.kind).toBe('kept'));
    expect((await inner.load('plateau'))?.document).toEqual(notebook.document);
    notebook.title('B');
    failing = true;
    await turn();
    expect(waits.begun.at(-1)?.milliseconds).toBe(1000);
  });

  it('tries at once when told to', async () => {
    const inner = openNotebookStore(new IDBFactory());
    const waits = new Waits();
    const save = vi.fn(inner.save).mockRejectedValueOnce(new DOMException('full', 'QuotaExceededError'));
    const keeper = keep(new Notebook(), { save, load: inner.load }, { after: waits.after });
    await turn();
    expect(keeper.state).toMatchObject({
      kind: 'failed',
      message:
        'Not kept: this device has no room left for the notebook. Save it as a file, then free some room.',
    });
    keeper.retry();
    expect(waits.begun[0]!.stopped).toBe(true);
    expect((await keeper.flush()).kind).toBe('kept');
    expect(save).toHaveBeenCalledTimes(2);
  });

  it('resolves a flush with the failure when it cannot be kept', async () => {
    const load: NotebookStore['load'] = () => Promise.resolve(null);
    const keeper = keep(
      new Notebook(),
      { save: () => Promise.reject(new Error('disk on fire')), load },
      { after: new Waits().after },
    );
    expect(await keeper.flush()).toMatchObject({
      kind: 'failed',
      message: expect.stringContaining('(disk on fire)'),
    });
  });

  it('brings the edits of two tabs together, in both', async () => {
    const factory = new IDBFactory();
    const [one, two] = channels(2);
    const [a, b] = [new Notebook(), new Notebook()];
    const adopt = (notebook: Notebook) => (other: OtherTab) => notebook.become(other.document, null);
    const first = keep(a, openNotebookStore(factory), { channel: one!, onOtherTab: adopt(a) });
    await first.flush();
    const stored = (await openNotebookStore(factory).load('plateau'))!;
    const second = keep(b, openNotebookStore(factory), { channel: two!, stored, onOtherTab: adopt(b) });
    a.apply(entryEdit(a.document, 'wear', 'wear-now', 0, 2.9));
    b.apply(entryEdit(b.document, 'wear', 'wear-now', 1, 11));
    b.title('From b');
    await Promise.all([first.flush(), second.flush()]);
    await vi.waitFor(() => expect(a.document).toEqual(b.document));
    const held = await openNotebookStore(factory).load('plateau');
    await vi.waitFor(() => expect(a.document).toEqual(held?.document));
    expect(a.document.title).toBe('From b');
    expect(a.document.cells[3]).toHaveProperty(['columns', '1', 'entries'], [2.9, 11, null]);
    // What was adopted is not an edit of this tab: nothing is saved for it.
    await Promise.all([first.flush(), second.flush()]);
    expect((await openNotebookStore(factory).load('plateau'))?.revision).toBe(held?.revision);
  });

  it('hands over what another tab saved as soon as it says so', async () => {
    const factory = new IDBFactory();
    const [one, two] = channels(2);
    const a = new Notebook();
    const heard = vi.fn((other: OtherTab) => a.become(other.document, null));
    const first = keep(a, openNotebookStore(factory), { channel: one!, onOtherTab: heard });
    await first.flush();
    const store = openNotebookStore(factory);
    const edit = notebookEdit(a.document, 'title', 'Elsewhere');
    await store.save('plateau', 1, [edit], applyEdit(a.document, edit));
    two!.postMessage({ id: 'another', revision: 2 });
    two!.postMessage('noise');
    await turn();
    expect(heard).not.toHaveBeenCalled();
    two!.postMessage({ id: 'plateau', revision: 2 });
    await vi.waitFor(() => expect(a.document.title).toBe('Elsewhere'));
    expect(heard).toHaveBeenCalledTimes(1);
    a.title('Here again');
    await first.flush();
    expect(await store.load('plateau')).toMatchObject({ revision: 3, document: { title: 'Here again' } });
  });

  it('drops what it read of another tab when it was edited here meanwhile', async () => {
    const factory = new IDBFactory();
    const [one, two] = channels(2);
    const inner = openNotebookStore(factory);
    let answer: () => void = () => undefined;
    const load: NotebookStore['load'] = async (id) => {
      await new Promise<void>((resolve) => {
        answer = resolve;
      });
      return inner.load(id);
    };
    const a = new Notebook();
    const heard = vi.fn((other: OtherTab) => a.become(other.document, null));
    const keeper = keep(a, { save: inner.save, load }, { channel: one!, onOtherTab: heard });
    await keeper.flush();
    const edit = addCell(a.document, { id: 'n', kind: 'note', title: 'N', text: '' }, 0);
    await inner.save('plateau', 1, [edit], applyEdit(a.document, edit));
    two!.postMessage({ id: 'plateau', revision: 2 });
    a.title('Here');
    answer();
    await keeper.flush();
    expect(heard).toHaveBeenCalledTimes(1);
    expect(a.document.title).toBe('Here');
    expect(a.document.cells[0]?.id).toBe('n');
    expect(await inner.load('plateau')).toMatchObject({ revision: 3, document: { title: 'Here' } });
  });

  it('loses nothing of either tab when the shell does not adopt the other one', async () => {
    const factory = new IDBFactory();
    const store = openNotebookStore(factory);
    const a = new Notebook();
    const told: OtherTab[] = [];
    const keeper = keep(a, store, { onOtherTab: (other) => told.push(other) });
    await keeper.flush();
    const edit = addCell(a.document, { id: 'n', kind: 'note', title: 'N', text: '' }, 0);
    await store.save('plateau', 1, [edit], applyEdit(a.document, edit));
    a.title('One');
    await keeper.flush();
    a.title('Two');
    await keeper.flush();
    expect(told).toHaveLength(2);
    const stored = await store.load('plateau');
    expect(stored?.document.title).toBe('Two');
    expect(stored?.document.cells[0]?.id).toBe('n');
  });

  it('reports edits that clash with another tab', async () => {
    const factory = new IDBFactory();
    const store = openNotebookStore(factory);
    const a = new Notebook();
    const told: OtherTab[] = [];
    const keeper = keep(a, store, {
      onOtherTab: (other) => {
        told.push(other);
        a.become(other.document, null);
      },
    });
    await keeper.flush();
    const edit = notebookEdit(a.document, 'title', 'Theirs');
    await store.save('plateau', 1, [edit], applyEdit(a.document, edit));
    a.title('Mine');
    await keeper.flush();
    expect(told.map((other) => other.conflicts.map((conflict) => conflict.edit.kind))).toEqual([
      ['notebook'],
    ]);
    expect(a.document.title).toBe('Theirs');
  });

  it('follows the shell to a new live notebook, and saves changes that come without an edit', async () => {
    const store = openNotebookStore(new IDBFactory());
    const first = new Notebook();
    const keeper = keep(first, store);
    await keeper.flush();
    const next = new Notebook();
    next.document = { ...first.document, title: 'Opened anew' };
    keeper.watch(next);
    expect(first.listeners.size).toBe(0);
    await keeper.flush();
    expect((await store.load('plateau'))?.document.title).toBe('Opened anew');
    next.become({ ...next.document, gist: 'Changed' }, null);
    await keeper.flush();
    expect((await store.load('plateau'))?.document.gist).toBe('Changed');
  });

  it('disposed of in the midst of a save tells nobody of it any more, nor other tabs through a closed channel', async () => {
    for (const end of ['pass', 'fail'] as const) {
      const notebook = new Notebook();
      let settle = (): void => undefined;
      const saving = new Promise<void>((resolve, reject) => {
        settle = end === 'pass' ? resolve : () => reject(new Error('no'));
      });
      const waits = new Waits();
      const posted: unknown[] = [];
      const keeper = keep(
        notebook,
        {
          save: (_id, known, _edits, document) =>
            saving.then(() => ({ document, revision: known + 1, savedAt: '', merged: false, conflicts: [] })),
          load: () => Promise.resolve(null),
        },
        {
          after: waits.after,
          channel: { onmessage: null, close: () => undefined, postMessage: (data) => posted.push(data) },
        },
      );
      await turn();
      const flushed = keeper.flush();
      keeper.dispose();
      settle();
      await flushed;
      expect([keeper.state.kind, posted, waits.begun]).toEqual(['keeping', [], []]);
    }
  });

  it('ends when it is disposed of', async () => {
    const notebook = new Notebook();
    const waits = new Waits();
    const save = vi.fn<NotebookStore['save']>(() => Promise.reject(new Error('no')));
    const keeper = keep(notebook, { save, load: () => Promise.resolve(null) }, { after: waits.after });
    await turn();
    keeper.dispose();
    expect([notebook.listeners.size, waits.begun[0]!.stopped]).toEqual([0, true]);
    notebook.title('After');
    keeper.retry();
    await turn();
    expect(save).toHaveBeenCalledTimes(1);
  });
});

describe('saveFailureWords', () => {
  it.each<[unknown, string]>([
    [null, 'could not write it. It will be tried again'],
    [undefined, 'could not write it. It will be tried again'],
    ['text', 'could not write it. It will be tried again'],
    [{ name: 'QuotaExceededError' }, 'no room left'],
    [new DOMException('old', 'VersionError'), 'another tab runs a newer Sparewell'],
    [
      Object.assign(new Error('It is damaged.'), { name: 'StorageRefusal' }),
      'cannot be read (It is damaged.)',
    ],
  ])('%o', (error, words) => {
    expect(saveFailureWords(error)).toMatch(/^Not kept: .*\.$/);
    expect(saveFailureWords(error)).toContain(words);
  });
});
