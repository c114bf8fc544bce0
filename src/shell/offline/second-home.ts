import { openFileHandles } from '../../notebook/storage/file-handles.ts';
import type { KeeperState } from '../../notebook/storage/keeper.ts';
import { saveNotebookFile } from '../session/notebook-files.ts';
import type { Session } from '../session/session.ts';
import { canKeepFiles, chooseHome, type FileHandle, FileHome } from './file-home.ts';
import type { Slips } from './slips.ts';

const ASKED_KEY = 'sparewell-keeping-asked';

const OFFER =
  'This notebook is kept in this browser alone. Browsers may clear what they keep when the disk fills up, and private windows forget it when they close.';

const ANSWER = {
  yes: 'The browser promises to keep the notebook until you clear its data yourself.',
  no: 'The browser makes no such promise. Keep a file as well.',
} as const;

/**
 * The second home of the open notebook: a file on disk that is kept current, where the browser can do that.
 * Offered once, after the first edit that was kept, together with asking the browser not to clear its storage.
 */
export class SecondHome {
  readonly #slips: Slips;
  readonly #onName: (name: string) => void;
  readonly #handles = openFileHandles<FileHandle>();
  #session: Session | null = null;
  #home: FileHome | null = null;
  #stop: () => void = () => undefined;

  /** @param onName hears the name of the file that is kept current, '' for none */
  constructor(slips: Slips, onName: (name: string) => void) {
    this.#slips = slips;
    this.#onName = onName;
  }

  /** Follows this session from now on. */
  async watch(session: Session): Promise<void> {
    this.#stop();
    this.#session = session;
    this.#settle(null);
    this.#slips.show('file', null);
    const kept = (state: KeeperState): void => {
      if (state.kind !== 'kept') return;
      this.#home?.keep(session.notebook.document);
      if (session.log.entries.length > 0) void this.#offer();
    };
    this.#stop = session.keeper.subscribe(kept);
    // The first edit may have been made and kept before this was fetched.
    kept(session.keeper.state);
    // Without a storage there is no handle either; what is wrong with it is said elsewhere.
    const handle = await this.#handles.get(session.notebook.document.id).catch(() => null);
    if (!handle || this.#session !== session || !canKeepFiles()) return;
    const home = this.#homeOf(handle);
    if (await home.mayWrite()) this.#settle(home);
    else this.#offerToGoOn(home);
  }

  /** Has the user choose a file and keeps it current; a browser that cannot hands the notebook out as a file. */
  async choose(): Promise<void> {
    const session = this.#session;
    if (!session) return;
    this.#asked();
    const { document } = session.notebook;
    if (!canKeepFiles()) {
      saveNotebookFile(document);
      return;
    }
    const handle = await chooseHome(document);
    if (!handle) return;
    this.#settle(this.#homeOf(handle));
    // Not remembered only means that the file has to be chosen again next time.
    await this.#handles.set(document.id, handle).catch(() => undefined);
  }

  #homeOf(handle: FileHandle): FileHome {
    return new FileHome(handle, (error) => this.#failed(handle.name, error));
  }

  #settle(home: FileHome | null): void {
    this.#home = home;
    this.#onName(home?.handle.name ?? '');
    if (home && this.#session) home.keep(this.#session.notebook.document);
  }

  #failed(name: string, error: unknown): void {
    this.#settle(null);
    const why = error instanceof Error && error.message ? ` (${error.message})` : '';
    this.#slips.show('file', {
      says: `The file ${name} could not be written${why}. The notebook is still on this page. Choose a file again to have one kept current.`,
      actions: [{ words: 'Choose a file', run: () => void this.choose() }],
      away: 'Not now',
    });
  }

  #offerToGoOn(home: FileHome): void {
    const goOn = async (): Promise<void> => {
      if (!(await home.askToWrite())) return;
      this.#slips.show('file', null);
      this.#settle(home);
    };
    this.#slips.show('file', {
      says: `The file ${home.handle.name} is no longer kept current: the browser asks again after each start.`,
      actions: [{ words: 'Keep it current', run: () => void goOn() }],
      away: 'Not now',
    });
  }

  /** Once on this device, and only to someone who has something to lose. */
  async #offer(): Promise<void> {
    if (this.#home || wasAsked()) return;
    this.#asked();
    if (await navigator.storage?.persisted?.().catch(() => false)) return;
    this.#slips.show('keeping', {
      says: OFFER,
      actions: [
        { words: canKeepFiles() ? 'Keep a file too' : 'Save as file', run: () => void this.choose() },
        { words: 'Ask the browser to keep it', run: () => void this.#askBrowser() },
      ],
      away: 'Not now',
    });
  }

  async #askBrowser(): Promise<void> {
    const promised = await (navigator.storage?.persist?.() ?? Promise.resolve(false)).catch(() => false);
    this.#slips.show('keeping', {
      says: promised ? ANSWER.yes : ANSWER.no,
      actions: promised
        ? []
        : [{ words: canKeepFiles() ? 'Keep a file too' : 'Save as file', run: () => void this.choose() }],
      away: 'Understood',
    });
  }

  #asked(): void {
    this.#slips.show('keeping', null);
    try {
      localStorage.setItem(ASKED_KEY, 'yes');
    } catch {
      // Then it is asked again on the next visit.
    }
  }
}

function wasAsked(): boolean {
  try {
    return localStorage.getItem(ASKED_KEY) !== null;
  } catch {
    return true;
  }
}
