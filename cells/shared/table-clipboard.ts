import { says } from './cell-events.ts';
import type { BlockAct, HandsHost } from './table-hands.ts';

type Hands = typeof import('./table-hands.ts');

const NOT_FETCHED = 'A file of the app could not be fetched. Load the page again';

/**
 * Copy, cut, paste and what else is done with a block. What does it is fetched when the keyboard first comes
 * into a grid, so that it is there when a key asks for it.
 */
export class GridClipboard {
  readonly #host: HandsHost;
  readonly #isWriting: () => boolean;
  #hands: Hands | null = null;
  #isPrepared = false;

  /** @param isWriting whether a figure is being written: the clipboard is then the field's own */
  constructor(host: HandsHost, isWriting: () => boolean) {
    this.#host = host;
    this.#isWriting = isWriting;
  }

  /** The keyboard has come in: have the hands ready soon, and not in the turn that has to show where it is. */
  prepare(): void {
    if (this.#isPrepared) return;
    this.#isPrepared = true;
    setTimeout(() => void this.fetch());
  }

  /** Have the hands ready. */
  async fetch(): Promise<Hands | null> {
    try {
      this.#hands ??= await import('./table-hands.ts');
    } catch {
      says(this.#host, NOT_FETCHED);
    }
    return this.#hands;
  }

  async act(what: BlockAct): Promise<void> {
    const hands = await this.fetch();
    await hands?.act(this.#host, what);
  }

  readonly onCopy = (event: ClipboardEvent): void => {
    this.#take(event, false);
  };

  readonly onCut = (event: ClipboardEvent): void => {
    this.#take(event, true);
  };

  #take(event: ClipboardEvent, cuts: boolean): void {
    if (this.#isWriting() || this.#host.target === null) return;
    event.preventDefault();
    const block = this.#hands?.copied(this.#host) ?? null;
    if (block === null || event.clipboardData === null) {
      void this.act(cuts ? 'cut' : 'copy');
      return;
    }
    event.clipboardData.setData('text/plain', block.text);
    event.clipboardData.setData('text/html', block.html);
    if (cuts) this.#hands?.clearCut(this.#host);
  }

  readonly onPaste = (event: ClipboardEvent): void => {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    const html = event.clipboardData?.getData('text/html') ?? '';
    if (this.#isWriting() || this.#host.target === null || (text === '' && html === '')) return;
    event.preventDefault();
    void this.fetch().then((hands) => hands?.pasteFields(this.#host, hands.pastedFields(text, html)));
  };
}
