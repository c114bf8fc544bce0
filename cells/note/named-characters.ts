/**
 * Characters that a note may write by name, such as `&deg;`. The build puts this in the place of the package
 * that micromark brings along: in a browser that one asks an element for them, which the page's policy against
 * markup from text forbids, and the whole list of HTML (2,231 names) weighs more than all of micromark.
 */
const NAMED: Readonly<Record<string, string>> = {
  ...{ amp: '&', lt: '<', gt: '>', quot: '"', apos: "'", nbsp: '\u00a0', shy: '\u00ad' },
  ...{ copy: '©', reg: '®', trade: '™', deg: '°', micro: 'µ', para: '¶', sect: '§', middot: '·', bull: '•' },
  ...{ hellip: '…', ndash: '–', mdash: '—', lsquo: '‘', rsquo: '’', ldquo: '“', rdquo: '”', laquo: '«' },
  ...{ raquo: '»', times: '×', divide: '÷', plusmn: '±', minus: '−', frac12: '½', frac14: '¼', frac34: '¾' },
  ...{ le: '≤', ge: '≥', ne: '≠', asymp: '≈', sum: '∑', radic: '√', infin: '∞', sup2: '²', sup3: '³' },
  ...{ euro: '€', pound: '£', yen: '¥', cent: '¢', larr: '←', uarr: '↑', rarr: '→', darr: '↓' },
  ...{ alpha: 'α', beta: 'β', gamma: 'γ', eta: 'η', lambda: 'λ', mu: 'μ', sigma: 'σ', Omega: 'Ω' },
  ...{ auml: 'ä', ouml: 'ö', uuml: 'ü', Auml: 'Ä', Ouml: 'Ö', Uuml: 'Ü', szlig: 'ß', eacute: 'é' },
};

/**
 * The character of that name; false if there is none here, and the note then shows what was written.
 *
 * @example decodeNamedCharacterReference('deg') // '°'
 */
export function decodeNamedCharacterReference(name: string): string | false {
  return Object.hasOwn(NAMED, name) ? (NAMED[name] as string) : false;
}

/** All names, for the test that compares them with the list of HTML. */
export const CHARACTER_NAMES: readonly string[] = Object.keys(NAMED);
