import type { PickDetail } from '../../cells/shared/cell-events.ts';
import type { Fault } from '../formula/fault.ts';
import type { Cell, NotebookDocument } from '../notebook/document.ts';
import type { Stop, StopLinks } from './road/stops.ts';

/**
 * The card that `[` or `]` jumps to: of the cards that feed the selected one (or that it feeds) the nearest
 * along the road, upwards for feeders and downwards for readers; null when there is none.
 */
export function jumpTarget(
  stops: readonly Stop[],
  from: Stop,
  links: StopLinks,
  way: 'fedBy' | 'feeds',
): string | null {
  const ids = links[way];
  const here = stops.indexOf(from);
  const place = (id: string): number => stops.findIndex((stop) => stop.id === id);
  const ahead =
    way === 'fedBy' ? ids.filter((id) => place(id) < here).at(-1) : ids.find((id) => place(id) > here);
  return ahead ?? (way === 'fedBy' ? ids.at(-1) : ids[0]) ?? null;
}

/** The fault that F jumps to: the next after the picked one, from the last on to the first; null when none. */
export function nextFault(
  document: NotebookDocument,
  faults: readonly Fault[],
  picked: PickDetail | null,
): PickDetail | null {
  const places = faults.flatMap((fault) => {
    const cell = cellOfNode(document, fault.place.node ?? '');
    return cell ? [{ cell: cell.id, node: fault.place.node ?? null, row: fault.place.row ?? null }] : [];
  });
  const at = places.findIndex((place) => place.node === picked?.node && place.row === picked?.row);
  return places[(at + 1) % Math.max(1, places.length)] ?? null;
}

/** The cell that holds a figure. */
export function cellOfNode(document: NotebookDocument, node: string): Cell | undefined {
  const dot = node.indexOf('.');
  const name = dot < 0 ? node : node.slice(0, dot);
  return document.cells.find((cell) => 'name' in cell && cell.name === name);
}

/** What was picked, after an edit: nothing when its card is gone, the card when its figure has another name. */
export function stillThere(document: NotebookDocument, picked: PickDetail | null): PickDetail | null {
  if (!picked || !document.cells.some((cell) => cell.id === picked.cell)) return null;
  if (picked.node === null || cellOfNode(document, picked.node)) return picked;
  return { cell: picked.cell, node: null, row: picked.row };
}
