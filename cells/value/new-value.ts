import type { NotebookDocument, ValueCell } from '../../src/notebook/document.ts';
import { freshId } from '../../src/notebook/fresh-id.ts';
import { cellNames } from '../../src/notebook/names.ts';
import { freeName } from '../../src/tables/plain-name.ts';

/**
 * A new, empty number on a form (or alone), with a name no other cell has.
 *
 * @example newValueOnForm(document, 'Limits') // { kind: 'value', name: 'new_value', form: 'Limits', ... }
 */
export function newValueOnForm(document: NotebookDocument, form: string | undefined): ValueCell {
  return {
    kind: 'value',
    id: freshId('cell'),
    title: 'New value',
    name: freeName('new_value', cellNames(document)),
    ...(form === undefined ? {} : { form }),
    content: { type: 'number', unit: '', value: null, control: 'field' },
  };
}
