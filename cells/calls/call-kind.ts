/** The kinds of call, in the order of their columns and of the keys 1 to 5. */
export const CALL_KINDS = ['leave', 'replace', 'carry', 'keep', 'way'] as const;

export type CallKind = (typeof CALL_KINDS)[number];

/** A call without its costs: what is done with the part. */
export interface CallName {
  /** As the table of choices names it. */
  readonly call: string;
  readonly kind: CallKind;
  /** How many spares are packed; 0 where none are. */
  readonly spares: number;
}

/**
 * The kind of a call: as its table says, or else by the words of its name, so that a table of choices without
 * kinds still shows its glyphs.
 *
 * @example callKindOf('replace and keep old', null) // 'keep'
 */
export function callKindOf(call: string, said: string | null): CallKind {
  const known = CALL_KINDS.find((kind) => kind === said?.trim().toLowerCase());
  if (known !== undefined) return known;
  const words = call.toLowerCase();
  if (/\bway\b|\broad\b/.test(words)) return 'way';
  if (/carry|spare/.test(words) && !/replace/.test(words)) return 'carry';
  if (/keep/.test(words)) return 'keep';
  return /replace|change|new|workshop|sen[dt] out/.test(words) ? 'replace' : 'leave';
}

const WORDS: Readonly<Record<CallKind, string>> = {
  leave: 'Leave',
  replace: 'Replace now',
  carry: 'Carry a spare',
  keep: 'Replace, keep old',
  way: 'Change on the way',
};

/** A kind of call in words, as a column is headed. */
export function kindInWords(kind: CallKind): string {
  return WORDS[kind];
}

/** Whether a workshop does it, by the words of its name. */
export const isSentOut = ({ call, kind }: Pick<CallName, 'call' | 'kind'>): boolean =>
  kind === 'replace' && /\bworkshop\b|\bsen[dt] out\b/i.test(call);

/**
 * A call in words, its depth said where more than one spare is packed.
 *
 * @example callInWords({ call: 'carry 2', kind: 'carry', spares: 2 }) // 'Carry 2 spares'
 */
export function callInWords(call: CallName): string {
  if (isSentOut(call)) return 'Send out';
  return call.kind === 'carry' && call.spares > 1 ? `Carry ${call.spares} spares` : WORDS[call.kind];
}
