import type { Edit } from './edit.ts';

/**
 * The edit that undoes this one: before and after change places, and a group runs backwards.
 *
 * @example invertEdit({ kind: 'notebook', field: 'title', before: 'A', after: 'B' }).after // 'A'
 */
export function invertEdit(edit: Edit): Edit {
  switch (edit.kind) {
    case 'group':
      return { ...edit, edits: edit.edits.map(invertEdit).reverse() };
    case 'entry':
      return { ...edit, before: edit.after, after: edit.before };
    case 'value':
      return { ...edit, before: edit.after, after: edit.before };
    case 'formula':
      return { ...edit, before: edit.after, after: edit.before };
    case 'cell':
      return { ...edit, before: edit.after, after: edit.before };
    case 'column':
      return { ...edit, before: edit.after, after: edit.before };
    case 'rows':
      return { ...edit, before: edit.after, after: edit.before };
    case 'pin':
      return { ...edit, before: edit.after, after: edit.before };
    case 'forbid':
      return { ...edit, before: edit.after, after: edit.before };
    case 'notebook':
      return { ...edit, before: edit.after, after: edit.before };
  }
}
