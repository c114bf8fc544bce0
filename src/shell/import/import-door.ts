import { isWriting } from '../../../cells/shared/focusable.ts';
import { breath } from '../first-paint.ts';
import type { Session } from '../session/session.ts';
import type { ImportSource } from './import-desk.ts';
import { isBlock } from './is-block.ts';

/** What the door needs of the page. */
interface DoorPage extends EventTarget {
  readonly session: Session | null;
  readonly renderRoot: HTMLElement | DocumentFragment;
  notice: string;
  say(text: string): void;
}

const doors = new WeakMap<DoorPage, ImportDoor>();

/** The one door of a page; it stands open from the first asking on. */
export function doorOf(page: DoorPage): ImportDoor {
  const door = doors.get(page) ?? new ImportDoor(page);
  doors.set(page, door);
  return door;
}

/**
 * The ways in for other people's files: the button, a file dropped on the page that is no notebook, and a block
 * that is pasted while nothing is being written and no table has taken it. The dialog and its readers are
 * fetched when they are first needed.
 */
class ImportDoor {
  readonly #page: DoorPage;

  constructor(page: DoorPage) {
    this.#page = page;
    page.addEventListener('sw-drop-file', (event) => {
      event.preventDefault();
      void this.show((event as CustomEvent<{ readonly file: File }>).detail.file);
    });
    addEventListener('paste', this.#onPaste);
  }

  /** Opens the dialog on a file or pasted text; without either it asks for one. */
  async show(source: ImportSource | null): Promise<void> {
    const { session, renderRoot } = this.#page;
    if (session === null) return;
    try {
      await import('./register.ts');
    } catch {
      this.#page.notice = 'Importing could not be fetched. Load the page again when there is a network.';
      return;
    }
    // To read the code and to open the dialog each take the page a while: not in one turn.
    await breath();
    let dialog = renderRoot.querySelector('sw-import-dialog');
    if (dialog === null) {
      dialog = document.createElement('sw-import-dialog');
      dialog.addEventListener('sw-says', (event) => this.#page.say(event.detail.text));
      renderRoot.append(dialog);
    }
    await dialog.show(session.notebook, source);
  }

  readonly #onPaste = (event: ClipboardEvent): void => {
    if (event.defaultPrevented || isWriting(event)) return;
    const file = event.clipboardData?.files[0];
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (file) void this.show(file);
    else if (isBlock(text)) void this.show({ name: 'pasted rows', text });
  };
}
