import { applyEdit } from '../../notebook/apply-edit.ts';
import type { NotebookDocument } from '../../notebook/document.ts';
import type { Edit } from '../../notebook/edit.ts';
import { group, moveCell, removeCell } from '../../notebook/edits.ts';
import { type Stop, stopsOf } from './stops.ts';

/** One step of undo for several edits, each made for the document as the ones before leave it. */
function chain(
  document: NotebookDocument,
  label: string,
  steps: readonly ((now: NotebookDocument) => Edit)[],
): Edit {
  const edits: Edit[] = [];
  let now = document;
  for (const step of steps) {
    const edit = step(now);
    edits.push(edit);
    now = applyEdit(now, edit);
  }
  return edits.length === 1 && edits[0] ? edits[0] : group(label, edits);
}

/**
 * Moves a card so that it stands at place `to` among the cards, counted from 0; all values of a form move
 * together. null when it would stand where it is.
 */
export function moveStop(document: NotebookDocument, stop: Stop, to: number): Edit | null {
  const stops = stopsOf(document);
  const from = stops.findIndex((one) => one.id === stop.id);
  const place = Math.max(0, Math.min(stops.length - 1, to));
  if (from < 0 || place === from) return null;
  const others = stops.filter((one) => one.id !== stop.id);
  const before = others.slice(0, place).reduce((sum, one) => sum + one.cells.length, 0);
  const steps = stop.cells.map((cell, at) => {
    // Moving down, each cell that leaves its place pulls the later ones up by one.
    const target = place > from ? before + stop.cells.length - 1 : before + at;
    return (now: NotebookDocument): Edit => moveCell(now, cell.id, target);
  });
  return chain(document, `${stop.title} moved`, steps);
}

/** Takes a card off the road, with all its cells. */
export function removeStop(document: NotebookDocument, stop: Stop): Edit {
  return chain(
    document,
    `${stop.title} removed`,
    stop.cells.map((cell) => (now: NotebookDocument) => removeCell(now, cell.id)),
  );
}
