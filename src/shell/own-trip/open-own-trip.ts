import startText from '../../../datasets/reference/start-parts.csv?raw';
import referenceText from '../../../datasets/reference/wear-reference.csv?raw';
import type { NotebookDocument } from '../../notebook/document.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';
import { readCatalogue } from '../../starter/own-trip/part-catalogue.ts';
import { OwnTripDesk } from './own-trip-desk.ts';
import { OwnTripDialog } from './own-trip-dialog.ts';

/** What beginning a trip needs of the page. */
export interface OwnTripPage {
  readonly renderRoot: ParentNode & Node;
  notice: string;
  openDocument(document: NotebookDocument): Promise<boolean>;
  makeDefault(): Promise<NotebookDocument>;
}

/** Today where the rider is, YYYY-MM-DD. */
function todayHere(): string {
  const now = new Date();
  const two = (figure: number): string => String(figure).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Shows the dialog in which a trip of one's own is begun; the one that stands there goes on. */
export async function openOwnTrip(page: OwnTripPage): Promise<void> {
  const standing = page.renderRoot.querySelector('sw-own-trip-dialog');
  if (standing !== null) return standing.show();
  if (customElements.get('sw-own-trip-dialog') === undefined)
    customElements.define('sw-own-trip-dialog', OwnTripDialog);
  const example = await page.makeDefault();
  const catalogue = readCatalogue({ reference: referenceText, start: startText });
  const dialog = document.createElement('sw-own-trip-dialog');
  const begin = (): void => {
    dialog.desk = new OwnTripDesk(example, catalogue, todayHere());
  };
  begin();
  dialog.bringIn = (draft) => bringInto(page, draft);
  dialog.addEventListener('sw-begin-again', begin);
  dialog.addEventListener('sw-own-trip', ({ detail }) => {
    begin();
    void page.openDocument(detail.document);
  });
  page.renderRoot.append(dialog);
  await dialog.show();
}

/** The dialog for files, over the one that asks for them. */
async function bringInto({ renderRoot }: OwnTripPage, draft: LiveNotebook): Promise<void> {
  await import('../import/register.ts');
  let dialog = renderRoot.querySelector('sw-import-dialog');
  if (dialog === null) {
    dialog = document.createElement('sw-import-dialog');
    renderRoot.append(dialog);
  }
  await dialog.show(draft, null);
}
