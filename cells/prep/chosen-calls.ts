import type { PrepCell } from '../../src/notebook/document.ts';
import { cellNamed } from '../../src/notebook/lookup.ts';
import type { PrepRole } from '../../src/notebook/prep-roles.ts';
import { type CallKind, callInWords, callKindOf } from '../calls/call-kind.ts';
import { ColumnReader, type ReadNotebook } from '../shared/column-reader.ts';

/** The call in force for one part, with the row of the pairing that holds its figures. */
export interface ChosenCall {
  readonly part: string;
  readonly call: string;
  readonly kind: CallKind;
  /** As the calls card words it: `Carry 2 spares`. */
  readonly words: string;
  /** Row of the pairing of parts and calls. */
  readonly row: number;
  readonly critical: boolean;
}

export type PrepReader = ColumnReader<PrepRole>;

/** The calls that stand now, in the order of the parts; a part without one is left out. */
export function chosenCalls(
  notebook: ReadNotebook,
  cell: PrepCell,
  reader: PrepReader,
): readonly ChosenCall[] {
  const calls = cellNamed(notebook.document, cell.calls);
  if (calls?.kind !== 'calls') return [];
  const pairing = new ColumnReader(notebook, {
    part: `${calls.pairing}.${calls.part}`,
    call: `${calls.pairing}.${calls.call}`,
  });
  const own = new ColumnReader(notebook, { part: `${calls.name}.part`, call: `${calls.name}.call` });
  const rows = new Map<string, number>();
  for (let row = 0; row < pairing.rows('part'); row++)
    rows.set(keyOf(pairing.text('part', row), pairing.text('call', row)), row);
  const chosen: ChosenCall[] = [];
  for (let at = 0; at < own.rows('part'); at++) {
    const [part, call] = [own.text('part', at), own.text('call', at)];
    const row = rows.get(keyOf(part, call));
    if (call === '' || row === undefined) continue;
    const kind = callKindOf(call, null);
    const spares = Number(/\d+/.exec(call)?.[0] ?? 1);
    const words = callInWords({ call, kind, spares });
    chosen.push({ part, call, kind, words, row, critical: reader.yes('critical', row) });
  }
  return chosen;
}

/** A part and a call as one key; no text of a table holds the sign between them. */
const keyOf = (part: string, call: string): string => `${part}\u0000${call}`;

/** Whether the old part stays on the bike at the start. */
export function keepsOld(call: ChosenCall): boolean {
  return call.kind === 'leave' || call.kind === 'carry' || call.kind === 'way';
}
