import type { Edit } from './edit.ts';
import { invertEdit } from './invert-edit.ts';

/** What was made and what was undone: all that undo and redo need to go on where they were. */
export interface Past {
  /** Edits in force, oldest first. */
  readonly made: readonly Edit[];
  /** Edits undone, the one that redo makes again next last. */
  readonly undone: readonly Edit[];
}

/**
 * Edits that were made, in order, and how far back the reader has gone: undo and redo without end. It holds
 * edits alone; whoever owns the document applies what `undo` and `redo` hand out.
 */
export class History {
  #made: Edit[] = [];
  #undone: Edit[] = [];

  get canUndo(): boolean {
    return this.#made.length > 0;
  }

  get canRedo(): boolean {
    return this.#undone.length > 0;
  }

  /** Edits in force, oldest first. */
  get made(): readonly Edit[] {
    return this.#made;
  }

  get past(): Past {
    return { made: this.#made, undone: this.#undone };
  }

  /** What was made before all that is held here, in an earlier visit. */
  recall(past: Past): void {
    // Once an edit was made or undone here, what had been undone before leads elsewhere.
    if (this.#made.length === 0 && this.#undone.length === 0) this.#undone = [...past.undone];
    this.#made = [...past.made, ...this.#made];
  }

  /** A new edit was made; what had been undone can no longer be redone. */
  done(edit: Edit): void {
    this.#made.push(edit);
    this.#undone = [];
  }

  /** The edit to apply now so that the last one is undone; null when there is none. */
  undo(): Edit | null {
    const last = this.#made.pop();
    if (last === undefined) return null;
    this.#undone.push(last);
    return invertEdit(last);
  }

  /** The edit to apply now so that what was undone last is done again; null when there is none. */
  redo(): Edit | null {
    const next = this.#undone.pop();
    if (next === undefined) return null;
    this.#made.push(next);
    return next;
  }

  forget(): void {
    this.#made = [];
    this.#undone = [];
  }
}
