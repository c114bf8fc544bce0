import type { CallsCell } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import { pinEdit } from '../../src/notebook/edits.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { type CallKind, callInWords, kindInWords } from './call-kind.ts';
import type { PartCall, PartCalls } from './calls-reading.ts';

/** Why a call cannot be set by hand, in one or two sentences. */
export interface PinRefusal {
  readonly part: string;
  readonly sentence: string;
}

/**
 * Why this call cannot be set for the part; null when it can. A call without a cost cannot: nobody could say
 * what it does to the total.
 *
 * @example pinRefusal(part, call, 'leave')?.sentence // 'Front tyre, Leave: past the risk limit.'
 */
export function pinRefusal(part: PartCalls, call: PartCall | null, kind: CallKind): PinRefusal | null {
  if (call === null) {
    return {
      part: part.part,
      sentence: `${part.part} has no call of the kind ${kindInWords(kind).toLowerCase()}.`,
    };
  }
  const what = `${part.part}, ${callInWords(call).toLowerCase()}`;
  if (call.waitsFor !== '') return { part: part.part, sentence: `${what}: it waits for ${call.waitsFor}.` };
  if (!call.allowed) {
    return { part: part.part, sentence: `${what}: ${asSentence(call.reason || 'this call is not allowed')}` };
  }
  if (!Number.isFinite(call.cost)) {
    return { part: part.part, sentence: `${what}: it has no cost yet. Give the part a price first.` };
  }
  return null;
}

function asSentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/**
 * The edit that sets a part's call by hand; setting the proposed call takes the pin away. null when nothing
 * would change.
 */
export function editForCall(
  document: LiveNotebook['document'],
  cell: CallsCell,
  part: PartCalls,
  call: PartCall | null,
): Edit | null {
  const pinned = Object.hasOwn(cell.pins, part.part) ? cell.pins[part.part]! : null;
  const after = call === null || call.call === part.proposed?.call ? null : call.call;
  return after === pinned ? null : pinEdit(document, cell.id, part.part, after);
}
