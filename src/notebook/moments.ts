import { applyEdit } from './apply-edit.ts';
import { differenceEdit } from './difference-edit.ts';
import type { NotebookDocument } from './document.ts';
import type { Edit } from './edit.ts';
import type { Past } from './history.ts';
import { invertEdit } from './invert-edit.ts';

/** A notebook as it stood once, under a name: a moment to go back to, or a what-if to hold beside it. */
export interface Moment {
  readonly id: string;
  /** The reader's own words: `before the second order`. */
  readonly name: string;
  /** ISO 8601 date and time, UTC. */
  readonly at: string;
  readonly document: NotebookDocument;
}

/** Longest name of a moment, in characters. */
export const MOMENT_NAME_LENGTH = 80;

/**
 * The one edit that takes a notebook to a moment of its own; undone, it is where it was.
 *
 * @returns null when it stands there already
 */
export function goTo(document: NotebookDocument, moment: Moment): Edit | null {
  const edit = differenceEdit(document, moment.document, `Back to ${moment.name}`);
  return edit.kind === 'group' && edit.edits.length === 0 ? null : edit;
}

/** Edits that are tried out before an earlier visit's are taken over. */
const MOST_TRIED = 200;

/**
 * What of an earlier visit's past still fits the document: from the last edit back to the first that does not.
 * Only the newest are tried; they stand on all that came before.
 */
export function fittingPast(document: NotebookDocument, past: Past): Past {
  const made = fitting(document, past.made.map(invertEdit));
  const undone = fitting(document, past.undone);
  return {
    made: past.made.slice(past.made.length - made),
    undone: past.undone.slice(past.undone.length - undone),
  };
}

/** How many of the edits can be applied one after another, from the last of the list on. */
function fitting(document: NotebookDocument, edits: readonly Edit[]): number {
  let now = document;
  for (let count = 0; count < Math.min(edits.length, MOST_TRIED); count += 1) {
    try {
      now = applyEdit(now, edits[edits.length - 1 - count]!);
    } catch {
      // A stored edit may be anything at all: whatever does not fit ends what can be undone.
      return count;
    }
  }
  return edits.length;
}
