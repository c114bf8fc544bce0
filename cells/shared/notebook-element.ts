import { LitElement } from 'lit';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';

/**
 * An element that shows a notebook. While an edit is being worked out it waits with its drawing, so that it is
 * drawn once, with the new figures, and not a first time with old ones; what takes longer (a plan) it does not
 * wait for.
 */
export abstract class NotebookElement extends LitElement {
  declare notebook: LiveNotebook;

  protected override scheduleUpdate(): ReturnType<LitElement['scheduleUpdate']> {
    const worked = this.notebook?.working;
    if (!worked || !this.hasUpdated) return super.scheduleUpdate();
    return worked.then(() => super.scheduleUpdate());
  }
}
