import type { CallsCell } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import { forbidEdit, pinEdit } from '../../src/notebook/edits.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { type CallKind, callInWords, kindInWords } from './call-kind.ts';
import { openCalls, type PartCall, type PartCalls } from './calls-reading.ts';

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
  if (call === null) return noSuchCall(part, kind);
  const what = whatOf(part, call);
  if (call.waitsFor !== '') return { part: part.part, sentence: `${what}: it waits for ${call.waitsFor}.` };
  if (!call.allowed) {
    return { part: part.part, sentence: `${what}: ${asSentence(call.reason || 'this call is not allowed')}` };
  }
  if (!Number.isFinite(call.cost)) {
    return { part: part.part, sentence: `${what}: it has no cost yet. Give the part a price first.` };
  }
  if (call.forbidden)
    return { part: part.part, sentence: `${what}: it is forbidden by hand. Allow it again first.` };
  return null;
}

const whatOf = (part: PartCalls, call: PartCall): string =>
  `${part.part}, ${callInWords(call).toLowerCase()}`;

const noSuchCall = (part: PartCalls, kind: CallKind): PinRefusal => ({
  part: part.part,
  sentence: `${part.part} has no call of the kind ${kindInWords(kind).toLowerCase()}.`,
});

/**
 * Why this call cannot be ruled out by hand; null when it can. The last one that may be made cannot: the part
 * would be left without any.
 *
 * @example forbidRefusal(part, call, 'replace')?.sentence
 * // 'Front tyre, replace now: it is the only call left that may be made. Allow another one first.'
 */
export function forbidRefusal(part: PartCalls, call: PartCall | null, kind: CallKind): PinRefusal | null {
  if (call === null) return noSuchCall(part, kind);
  const open = openCalls(part);
  if (call.forbidden || open.length !== 1 || open[0] !== call) return null;
  return {
    part: part.part,
    sentence: `${whatOf(part, call)}: it is the only call left that may be made. ${mendOf(part)}`,
  };
}

const mendOf = (part: PartCalls): string =>
  part.calls.some((call) => call.forbidden)
    ? 'Allow another one first.'
    : 'What holds the others back has to be put right first.';

/** The edit that rules a call out by hand, or allows it again. */
export const editForForbidding = (
  document: LiveNotebook['document'],
  cell: CallsCell,
  part: PartCalls,
  call: PartCall,
): Edit => forbidEdit(document, cell.id, part.part, call.call, !call.forbidden);

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
