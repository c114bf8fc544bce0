import { FORMAT, type NotebookDocument, VERSION } from '../../notebook/document.ts';
import { freshId } from '../../notebook/fresh-id.ts';

/** An empty notebook, in euros until the user says otherwise. */
export function emptyNotebook(): NotebookDocument {
  return {
    format: FORMAT,
    version: VERSION,
    id: freshId('notebook'),
    title: 'New notebook',
    gist: '',
    money: 'EUR',
    cells: [],
  };
}
