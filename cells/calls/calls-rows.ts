import { html, nothing, type TemplateResult } from 'lit';
import { barredIcon, cautionIcon, faultIcon } from '../shared/icons.ts';
import { shareBar } from '../shared/table-draw.ts';
import { callGlyph } from './call-glyph.ts';
import { type CallKind, callInWords, isSentOut, kindInWords } from './call-kind.ts';
import {
  callOfKind,
  cheapestOpen,
  isHeldBack,
  type PartCall,
  type PartCalls,
  type PartState,
} from './calls-reading.ts';
import { marginOf, wholeMoney } from './calls-words.ts';

/** A place among the calls: part by its name, column counted as shown; null: the head. */
export interface CallsPlace {
  readonly row: number;
  readonly column: number;
}

export interface CallsUse {
  readonly kinds: readonly CallKind[];
  readonly showsChance: boolean;
  readonly money: string;
  readonly at: CallsPlace;
  /** Row, in the calls cell's own table, of the part that is in the panel. */
  readonly pickedRow: number | null;
  /** Why the plan's call for a part is dearer than its own cheapest, in a word and a few more. */
  whyDearer(part: string): { readonly word: string; readonly title: string };
  readonly refusal: { readonly part: string; readonly sentence: string } | null;
  closeRefusal(): void;
}

/** Longest reason, in characters, that stands in a cell as it is; longer ones are read in the panel. */
const SHORT_REASON = 12;

function inBrief(call: PartCall): string {
  const short = [call.inBrief, call.reason].find((text) => text !== '' && text.length <= SHORT_REASON);
  return short ?? 'not allowed';
}

export function tag(call: PartCall, byHand: boolean): TemplateResult {
  return html`<span class="call ${byHand ? 'hand' : ''}" data-call=${call.kind}>${callGlyph(call.kind)}${callInWords(call)}</span>`;
}

interface CostCell {
  readonly classes: string;
  readonly content: unknown;
  readonly title: string | typeof nothing;
}

function costCell(part: PartCalls, kind: CallKind): CostCell {
  const call = callOfKind(part, kind);
  if (call === null)
    return { classes: 'na', content: html`<span class="sr">no such call</span>`, title: nothing };
  if (call.waitsFor !== '')
    return { classes: 'waits', content: 'waits', title: `waits for ${call.waitsFor}` };
  const isChosen = part.chosen?.call === call.call;
  if (call.forbidden && !isChosen)
    return { classes: 'na barred', content: html`${barredIcon()}forbidden`, title: 'forbidden by hand' };
  if (!call.allowed && !isChosen) {
    const title = call.reason === '' ? nothing : call.reason;
    if (kind === 'leave' && isHeldBack(part))
      return { classes: 'na held', content: html`<span>held back</span>`, title };
    return { classes: 'na', content: inBrief(call), title };
  }
  if (!Number.isFinite(call.cost)) return { classes: 'na', content: 'no price', title: nothing };
  const isBest = part.chosen !== null && cheapestOpen(part)?.call === call.call;
  const depth = isSentOut(call)
    ? 'sent out'
    : call.spares > 1 && kind === 'carry'
      ? `${call.spares} spares`
      : '';
  return {
    classes: `${isChosen ? 'chosen' : ''} ${isBest ? 'best' : ''}`,
    content: html`${isBest && !isChosen ? html`<span class="in">best</span>` : nothing}${wholeMoney(call.cost)}${
      depth === '' ? nothing : html`<span class="depth">${depth}</span>`
    }`,
    title: nothing,
  };
}

const NO_CALL: Readonly<Partial<Record<PartState, string>>> = {
  'no call meets the limit': 'No call meets the limit',
  'needs a price': 'Needs a price',
  'forbidden by hand': 'All forbidden',
};

function callCell(part: PartCalls): unknown {
  if (part.state === 'waits') return html`<span class="waiting">waits for ${part.waitsFor}</span>`;
  if (part.chosen === null) {
    return html`<span class="fault-line">${faultIcon()}${NO_CALL[part.state] ?? 'No call'}</span>`;
  }
  if (part.state === 'not allowed by hand') {
    const wanted = part.pinned === null ? 'by hand' : callInWords(part.pinned);
    return html`${tag(part.chosen, false)}<span class="byhand" title=${part.pinned?.reason || nothing}>${wanted} not allowed</span>`;
  }
  return html`${tag(part.chosen, part.byHand)}${part.byHand ? html`<span class="byhand">by hand</span>` : nothing}`;
}

function marginCell(part: PartCalls, use: CallsUse): { classes: string; content: unknown } {
  const margin = marginOf(part);
  if (margin.kind === 'limits') {
    const { word, title } = use.whyDearer(part.part);
    return {
      classes: 'quiet',
      content: html`<span title="${margin.by} over its own cheapest: ${title}">${word}</span>`,
    };
  }
  if (margin.kind === 'best') return { classes: 'best', content: margin.by };
  if (margin.kind === 'level') return { classes: 'quiet', content: 'level' };
  if (margin.kind === 'only') return { classes: 'quiet', content: 'only' };
  return margin.kind === 'over' ? { classes: 'over', content: margin.by } : { classes: '', content: nothing };
}

/** Head of the calls: part, chance, one column a kind of call, the call, and by how much it is best. */
export function callsHead(use: CallsUse): TemplateResult {
  const chance = use.showsChance
    ? html`<th scope="col" role="columnheader" class="num">Gives up<span class="u">% if left</span></th>`
    : nothing;
  return html`<thead role="rowgroup"><tr role="row" aria-rowindex="1">
    <th scope="col" role="columnheader">Part</th>${chance}
    ${use.kinds.map(
      (kind) =>
        html`<th scope="col" role="columnheader" class="num" data-call=${kind}>${callGlyph(kind)}${kindInWords(kind)}</th>`,
    )}
    <th scope="col" role="columnheader">Call</th>
    <th scope="col" role="columnheader" class="num by">Best by<span class="u">${use.money}</span></th>
  </tr></thead>`;
}

/** The row of one part, and under it why a call could not be set, if one was just refused. */
export function callsRow(part: PartCalls, row: number, use: CallsUse): TemplateResult {
  const reached = (column: number): number => (use.at.row === row && use.at.column === column ? 0 : -1);
  const classes = `${(row + 1) % 5 === 0 ? 'fifth' : ''} ${use.pickedRow === part.row ? 'picked' : ''}`;
  const firstCost = use.showsChance ? 2 : 1;
  const last = firstCost + use.kinds.length;
  const margin = marginCell(part, use);
  return html`<tr role="row" class=${classes} aria-rowindex=${row + 2} aria-current=${use.pickedRow === part.row ? 'true' : nothing}>
    <th scope="row" role="rowheader" data-row=${row} data-col="0" tabindex=${reached(0)}
      title=${part.part.length > 20 ? part.part : nothing}>${part.part}${part.critical ? cautionIcon() : nothing}</th>
    ${
      use.showsChance
        ? html`<td role="gridcell" class="num oddscell" data-row=${row} data-col="1" tabindex=${reached(1)}>
            <span class="odds">${shareBar(part.chance)}<span class="fig">${Number.isFinite(part.chance) ? Math.round(part.chance * 100) : '–'}</span></span></td>`
        : nothing
    }
    ${use.kinds.map((kind, i) => {
      const cost = costCell(part, kind);
      const column = firstCost + i;
      return html`<td role="gridcell" class="num cost ${cost.classes}" data-call=${kind} data-money=${use.money} title=${cost.title}
        data-row=${row} data-col=${column} tabindex=${reached(column)}>${cost.content}</td>`;
    })}
    <td role="gridcell" class="callcell" data-row=${row} data-col=${last} tabindex=${reached(last)}>${callCell(part)}</td>
    <td role="gridcell" class="num bycell ${margin.classes}" data-row=${row} data-col=${last + 1} tabindex=${reached(last + 1)}>${margin.content}</td>
  </tr>${use.refusal?.part === part.part ? refusalRow(use, last + 2) : nothing}`;
}

function refusalRow(use: CallsUse, columns: number): TemplateResult {
  return html`<tr role="row" class="refusal"><td role="gridcell" colspan=${columns}><span class="inner" role="alert">${faultIcon()}
    <span>${use.refusal?.sentence}</span>
    <button type="button" class="plain" @click=${use.closeRefusal}>Close</button></span></td></tr>`;
}
