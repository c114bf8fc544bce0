import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { differenceEdit } from '../../src/notebook/difference-edit.ts';
import type { NotebookDocument } from '../../src/notebook/document.ts';
import { EditError } from '../../src/notebook/edit-error.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { goTo } from '../../src/notebook/moments.ts';
import { writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { same } from '../../src/notebook/same.ts';
import { Keeper, type TabChannel } from '../../src/notebook/storage/keeper.ts';
import { type NotebookStore, openNotebookStore } from '../../src/notebook/storage/notebook-store.ts';
import { openPastStore } from '../../src/notebook/storage/past-store.ts';
import { PastKeeper } from '../../src/shell/session/past-keeper.ts';
import { type SavedLast, withPast } from '../../src/shell/session/with-past.ts';
import { type Dice, NEVER_THERE, refusedEdit, twinEdit } from './plain-edits.ts';
import {
  documentOf,
  formulasOf,
  isThere,
  type Plain,
  type Pointer,
  startDocument,
  startPlain,
  textOf,
} from './plain-notebook.ts';

/** Turns of the event loop after which two tabs that still differ count as apart. */
const MOST_TURNS = 200;

/** As many as a run of all tests has time for. */
const STORIES = 8;
/** Far above what they take, so that a busy machine does not fail them, ms. */
const TIMEOUT_MS = 60_000;

const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** What undo and redo go through, as whole notebooks. */
class Steps {
  private readonly states: string[];
  private at: number;

  constructor(states: string[], at = states.length - 1) {
    this.states = states;
    this.at = at;
  }

  get now(): Plain {
    return JSON.parse(this.states[this.at]!) as Plain;
  }

  get canUndo(): boolean {
    return this.at > 0;
  }

  /** One of the states gone through so far, or undone. */
  some(die: number): Plain {
    return JSON.parse(this.states[die % this.states.length]!) as Plain;
  }

  make(change: (plain: Plain) => void): void {
    const plain = this.now;
    change(plain);
    this.states.splice(this.at + 1, Number.POSITIVE_INFINITY, JSON.stringify(plain));
    this.at += 1;
  }

  /** Becomes what another tab made of it; nothing when that is the same. */
  follow(other: Steps): void {
    if (!same(documentOf(this.now), documentOf(other.now))) this.become(other.now);
  }

  become(other: Plain): void {
    this.make((plain) => {
      for (const key of Object.keys(plain)) delete (plain as unknown as Record<string, unknown>)[key];
      Object.assign(plain, other);
    });
  }

  step(by: -1 | 1): boolean {
    const to = this.at + by;
    if (to < 0 || to >= this.states.length) return false;
    this.at = to;
    return true;
  }

  copy(): Steps {
    return new Steps([...this.states], this.at);
  }
}

interface Tab {
  readonly live: LiveNotebook;
  readonly keeper: Keeper;
  readonly steps: Steps;
  readonly saved: SavedLast;
}

/** A browser with the notebook open in one tab or two, put together as the page puts it together. */
class Browser {
  readonly #factory = new IDBFactory();
  readonly #store: NotebookStore = openNotebookStore(this.#factory);
  readonly #channels = new Set<TabChannel>();
  /** What undo goes through after a reload: the steps of the tab that saved last, as it saved them. */
  #kept = { revision: 1, steps: new Steps([JSON.stringify(startPlain())]) };
  first!: Tab;
  second: Tab | null = null;

  async begin(): Promise<void> {
    const document = startDocument();
    await this.#store.save(document.id, 0, [], document);
    this.first = await this.#open();
  }

  #channel(): TabChannel {
    const channel: TabChannel = {
      onmessage: null,
      close: () => this.#channels.delete(channel),
      postMessage: (data) => {
        for (const other of this.#channels)
          if (other !== channel) other.onmessage?.({ data } as MessageEvent);
      },
    };
    this.#channels.add(channel);
    return channel;
  }

  async #open(): Promise<Tab> {
    const opened = (await this.#store.load('small'))!;
    const live = LiveNotebook.open(opened.document);
    const pasts = openPastStore(this.#factory);
    const past = await PastKeeper.begin(live, pasts, opened.document, opened.revision);
    const saved: SavedLast = { revision: null };
    const keeper = new Keeper(live, {
      store: withPast(this.#store, () => past, saved),
      stored: opened,
      channel: this.#channel(),
      onOtherTab: ({ document, conflicts }) => {
        if (conflicts.length > 0) throw new Error(`left out: ${conflicts[0]!.reason}`);
        live.apply(differenceEdit(live.document, document, 'Edits from another tab'));
      },
    });
    return { live, keeper, steps: this.#kept.steps.copy(), saved };
  }

  /** Saves what a tab has made, until both tabs hold the same. */
  async keep(tab: Tab): Promise<void> {
    expect((await tab.keeper.flush()).kind).toBe('kept');
    const other = tab === this.first ? this.second : this.first;
    for (let turns = 0; turns < MOST_TURNS; turns += 1) {
      if (other === null || same(other.live.document, tab.live.document)) break;
      await turn();
    }
    other?.steps.follow(tab.steps);
    // What a merged save brought in is kept once its turn is over, and so are the steps that lead to it.
    await new Promise((then) => setTimeout(then, 1));
    for (let turns = 0; turns < 6; turns += 1) await turn();
    const { revision } = tab.saved;
    if (revision !== null && revision > this.#kept.revision)
      this.#kept = { revision, steps: tab.steps.copy() };
  }

  async openSecond(): Promise<Tab> {
    this.second ??= await this.#open();
    return this.second;
  }

  async reload(): Promise<void> {
    this.close();
    this.first = await this.#open();
  }

  close(): void {
    for (const tab of [this.first, this.second]) {
      tab?.keeper.dispose();
      tab?.live.dispose();
    }
    this.second = null;
  }
}

type Act =
  | { readonly act: 'edit' | 'edit in the second tab'; readonly dice: Dice }
  | { readonly act: 'undo' | 'redo' | 'reload' }
  | { readonly act: 'refused' | 'both at once' | 'back to a moment'; readonly dice: Dice };

const die = fc.nat({ max: 9_999 });
const dice = fc.record({ kind: die, a: die, b: die, c: die });
const acts = (act: Act['act'], weight: number): fc.WeightedArbitrary<Act> => ({
  weight,
  arbitrary: dice.map((thrown) => ({ act, dice: thrown }) as Act),
});
const story = fc.array(
  fc.oneof(
    acts('edit', 24),
    acts('edit in the second tab', 3),
    acts('undo', 6),
    acts('redo', 4),
    acts('reload', 1),
    acts('refused', 2),
    acts('both at once', 1),
    acts('back to a moment', 1),
  ),
  { minLength: 20, maxLength: 50, size: 'max' },
);

function editIn(tab: Tab, thrown: Dice, fresh: string): void {
  const twin = twinEdit(tab.steps.now, thrown, fresh);
  tab.live.apply(twin.edit(tab.live.document));
  tab.steps.make(twin.change);
}

function refuse(tab: Tab, thrown: Dice): void {
  const held = tab.live.document;
  expect(() => tab.live.apply(refusedEdit(held, thrown))).toThrow(EditError);
  expect(tab.live.document).toBe(held);
}

/** Goes to an earlier state that was noted, as one edit. */
function backToMoment({ live, steps }: Tab, thrown: Dice): void {
  const then = steps.some(thrown.a);
  const document = documentOf(then) as NotebookDocument;
  const edit = goTo(live.document, { id: 'moment', name: 'Then', at: '2026-03-14T09:00:00Z', document });
  expect(edit === null).toBe(same(live.document, document));
  if (edit === null) return;
  live.apply(edit);
  steps.become(then);
}

/** Edits of two tabs, each saved without either having heard of the other's. */
async function both(browser: Browser, thrown: Dice): Promise<void> {
  const second = await browser.openSecond();
  const { first } = browser;
  const [title, gist] = [`Title ${thrown.a}`, `Gist ${thrown.b}`];
  const edit = (tab: Tab, field: 'title' | 'gist', after: string): void =>
    tab.live.apply({ kind: 'notebook', field, before: tab.live.document[field], after });
  edit(first, 'title', title);
  edit(second, 'gist', gist);
  first.steps.make((plain) => {
    plain.title = title;
  });
  second.steps.make((plain) => {
    plain.gist = gist;
  });
  await first.keeper.flush();
  await second.keeper.flush();
  second.steps.make((plain) => {
    plain.title = title;
  });
  await browser.keep(second);
}

async function take(browser: Browser, what: Act, fresh: string): Promise<void> {
  const { first } = browser;
  switch (what.act) {
    case 'edit':
      editIn(first, what.dice, fresh);
      return browser.second === null ? undefined : browser.keep(first);
    case 'undo':
    case 'redo': {
      const by = what.act === 'undo' ? -1 : 1;
      const made = (by === -1 ? first.live.undo() : first.live.redo()) !== null;
      expect(made).toBe(first.steps.step(by));
      return browser.second === null ? undefined : browser.keep(first);
    }
    case 'back to a moment':
      backToMoment(first, what.dice);
      return browser.second === null ? undefined : browser.keep(first);
    case 'refused':
      return refuse(first, what.dice);
    case 'reload':
      await browser.keep(first);
      return browser.reload();
    case 'edit in the second tab': {
      await browser.keep(first);
      const second = await browser.openSecond();
      editIn(second, what.dice, fresh);
      return browser.keep(second);
    }
    case 'both at once':
      await browser.keep(first);
      return both(browser, what.dice);
  }
}

/** Names by which a sentence may speak of what is gone: its own, or its table's. */
function namesOf(plain: Plain, gone: readonly Pointer[]): readonly string[] {
  const pointers = formulasOf(plain)
    .flatMap(({ pieces }) => pieces)
    .filter((piece) => typeof piece !== 'string');
  return gone.flatMap(({ cell, table, name }) => [
    name,
    table ?? name,
    ...pointers.filter((each) => each.cell === cell && each.column === undefined).map((each) => each.name),
  ]);
}

/** Each formula that points at what is gone has no figure, and a fault names what is missing. */
async function expectFaults({ live, steps }: Tab): Promise<void> {
  await live.settled();
  const plain = steps.now;
  const faults = live.faults();
  const said = faults.map(({ message }) => message);
  // Of a formula that cannot be read, or that needs itself, this is said and nothing further is looked at.
  const unread = faults.flatMap(({ kind, place }) =>
    kind === 'grammar' || kind === 'circle' ? [place.node] : [],
  );
  for (const { node, pieces } of formulasOf(plain)) {
    const gone = pieces.filter((piece) => typeof piece !== 'string').filter((each) => !isThere(plain, each));
    if (gone.length === 0 || unread.includes(node)) continue;
    const isPairing = plain.cells.some(({ name, kind }) => name === node && kind === 'pairing');
    if (!isPairing) expect(['fault', 'waiting'], node).toContain(live.read(node).state);
    // Of several that are gone, one is told at a time; some formulas read a name that never was.
    const never = textOf(pieces).includes(NEVER_THERE) ? [NEVER_THERE] : [];
    const names = [...namesOf(plain, gone), ...never];
    const isSaid = said.some((message) => names.some((name) => message.includes(name)));
    expect(isSaid, `${names} of ${node} in: ${said.join(' | ')}`).toBe(true);
  }
}

async function tell(acts: readonly Act[]): Promise<void> {
  const browser = new Browser();
  await browser.begin();
  const beginning = writeNotebookFile(browser.first.live.document);
  try {
    for (const [at, act] of acts.entries()) {
      await take(browser, act, `name_${at}`);
      for (const tab of [browser.first, browser.second])
        if (tab !== null && !same(tab.live.document, documentOf(tab.steps.now)))
          expect(tab.live.document, `${act.act}, step ${at + 1}`).toEqual(documentOf(tab.steps.now));
      await expectFaults(browser.first);
    }
    await browser.keep(browser.first);
    await browser.reload();
    const { live, steps } = browser.first;
    for (; live.canUndo; live.undo()) expect(steps.step(-1)).toBe(true);
    expect(steps.canUndo).toBe(false);
    expect(writeNotebookFile(live.document)).toBe(beginning);
  } finally {
    browser.close();
  }
}

beforeAll(() => {
  vi.stubGlobal('IDBKeyRange', IDBKeyRange);
});

afterAll(() => {
  vi.unstubAllGlobals();
});

test('the plain notebook begins as the document does', () => {
  expect(documentOf(startPlain())).toEqual(JSON.parse(JSON.stringify(startDocument())));
});

test(
  'edits, undo, redo, reloads and a second tab, in any order, come to what a plain notebook comes to',
  async () => {
    await fc.assert(fc.asyncProperty(story, tell), { numRuns: STORIES, seed: 20260314, endOnFailure: true });
  },
  TIMEOUT_MS,
);
