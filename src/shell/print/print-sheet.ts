import type { NotebookDocument } from '../../notebook/document.ts';

/**
 * Prints one card alone: the one that asked for it. The rest of the page is back as soon as the printer's
 * dialog is closed.
 *
 * @param asked a composed event from inside the card
 */
export function printSheet(asked: Event): void {
  const stop = asked
    .composedPath()
    .find((one): one is HTMLElement => one instanceof HTMLElement && one.matches('.stop'));
  if (!stop) return;
  const page = document.documentElement;
  stop.classList.add('printed');
  page.dataset.printing = '';
  addEventListener(
    'afterprint',
    () => {
      stop.classList.remove('printed');
      delete page.dataset.printing;
    },
    { once: true },
  );
  print();
}

/** Where cards stand. */
interface Cards {
  cardOf(cell: string): HTMLElement | null;
}

/** Prints the first prep sheet of a notebook. Gives back '' or, when there is none, the sentence that says so. */
export function printFirstSheet(notebook: NotebookDocument, road: Cards | null): string {
  const sheet = notebook.cells.find((cell) => cell.kind === 'prep');
  const card = sheet && road?.cardOf(sheet.id);
  if (!card) return 'This notebook has no prep sheet to print: add one at the end of the road.';
  card.dispatchEvent(new CustomEvent('sw-print', { bubbles: true, composed: true }));
  return '';
}
