import { applyEdit } from './apply-edit.ts';
import type { NotebookDocument } from './document.ts';
import type { Edit } from './edit.ts';
import { EditError } from './edit-error.ts';
import { rebaseEdit } from './rebase-edit.ts';

/** An edit that could not be brought together with another tab's. */
export interface SaveConflict {
  readonly edit: Edit;
  /** One sentence: why it no longer fits. */
  readonly reason: string;
}

export interface Merged {
  readonly document: NotebookDocument;
  /** The edits that went in, as they were put for the other state. */
  readonly edits: readonly Edit[];
  readonly conflicts: readonly SaveConflict[];
}

/**
 * Brings edits made on one state of a notebook to another state of it. An edit that no longer fits is left out
 * and reported; the others still go in.
 *
 * @param base the notebook as it was before the edits
 * @param theirs the notebook as another tab saved it meanwhile
 */
export function mergeEdits(base: NotebookDocument, theirs: NotebookDocument, edits: readonly Edit[]): Merged {
  const conflicts: SaveConflict[] = [];
  const made: Edit[] = [];
  let mine = base;
  let document = theirs;
  for (const edit of edits) {
    try {
      const rebased = rebaseEdit(edit, mine, document);
      document = applyEdit(document, rebased);
      made.push(rebased);
    } catch (error) {
      if (!(error instanceof EditError)) throw error;
      conflicts.push({ edit, reason: error.message });
    }
    mine = applyEdit(mine, edit);
  }
  return { document, edits: made, conflicts };
}
