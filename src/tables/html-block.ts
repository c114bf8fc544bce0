/** Most cells that are read; a block past it is not pasted from HTML. */
const MOST_FIELDS = 1_000_000;
/** Most rows or columns that one cell may span. */
const MOST_SPAN = 1_000;

/**
 * A tag with its attributes, a comment, or text between them. What an attribute holds is bounded, so that a
 * broken tag is given up soon and long broken text takes no longer than long sound text.
 */
const PIECE =
  /<!--[\s\S]*?(?:-->|$)|<(\/?)([a-z][a-z0-9]*)((?:"[^"]{0,9999}"|'[^']{0,9999}'|[^<>"']){0,999})>|[^<]+|</gi;

const SILENT = new Set(['style', 'script', 'head', 'title', 'template']);
/** After these a new line begins inside a cell. */
const BREAKS = new Set(['br', 'p', 'div', 'li']);

const NAMED: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  apos: "'",
  nbsp: ' ',
  minus: '−',
  ndash: '–',
  euro: '€',
  pound: '£',
  deg: '°',
  frac12: '½',
  times: '×',
};

function decoded(text: string): string {
  return text.replace(/&(?:#(\d{1,7})|#x([\da-f]{1,6})|([a-z]+\d*));/gi, (whole, decimal, hex, name) => {
    if (name !== undefined)
      return Object.hasOwn(NAMED, name.toLowerCase()) ? NAMED[name.toLowerCase()]! : whole;
    const code = decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal);
    return code > 0 && code <= 0x10ffff && (code < 0xd800 || code > 0xdfff)
      ? String.fromCodePoint(code)
      : whole;
  });
}

function span(attributes: string, name: string): number {
  const found = new RegExp(`\\b${name}\\s*=\\s*["']?\\s*(\\d{1,6})`, 'i').exec(attributes);
  return Math.max(1, Math.min(MOST_SPAN, Number(found?.[1] ?? 1)));
}

/** Rows being read, with the places that a cell from above still takes up. */
class Rows {
  readonly rows: string[][] = [];
  fields = 0;
  #taken = new Map<string, true>();

  begin(): void {
    this.rows.push([]);
  }

  /** Puts a cell in the next free place; what it spans beyond its own place stays empty. */
  put(text: string, across: number, down: number): void {
    if (this.rows.length === 0) this.begin();
    const at = this.rows.length - 1;
    const row = this.rows[at]!;
    this.#skipTaken(at, row);
    for (let i = 0; i < across; i += 1) {
      for (let j = 1; j < down && this.#taken.size < MOST_FIELDS; j += 1)
        this.#taken.set(`${at + j} ${row.length}`, true);
      row.push(i === 0 ? text : '');
      this.fields += 1;
    }
  }

  #skipTaken(at: number, row: string[]): void {
    while (this.#taken.has(`${at} ${row.length}`)) row.push('');
  }
}

/**
 * The first table in a piece of HTML, as other programs put it on the clipboard: its rows as fields of text.
 * Only text is taken; nothing of the HTML is ever put into a page. Merged cells keep their text in their first
 * field. null when there is no table in it.
 *
 * @example readHtmlBlock('<table><tr><th>km<td>240<tr><td colspan=2>&lt;sand&gt;</table>')
 * // [['km', '240'], ['<sand>', '']]
 */
export function readHtmlBlock(html: string): string[][] | null {
  const rows = new Rows();
  let depth = 0;
  let silent = '';
  let cell: { text: string; across: number; down: number } | null = null;
  const endCell = (): void => {
    if (cell !== null) rows.put(tidy(cell.text), cell.across, cell.down);
    cell = null;
  };
  for (const [piece, closing, tag = '', attributes = ''] of html.matchAll(PIECE)) {
    const name = tag.toLowerCase();
    if (rows.fields > MOST_FIELDS) return null;
    if (silent !== '') {
      if (closing === '/' && name === silent) silent = '';
    } else if (name === '') {
      if (cell !== null && !piece.startsWith('<!--'))
        (cell as { text: string }).text += decoded(piece).replace(/\s+/g, ' ');
    } else if (SILENT.has(name) && closing === '') silent = name;
    else if (name === 'table') {
      depth += closing === '' ? 1 : -1;
      if (depth <= 0) {
        endCell();
        if (rows.fields > 0) break;
      }
    } else if (depth !== 1) {
      // A table inside a cell gives its text to that cell.
    } else if (name === 'tr') {
      endCell();
      if (closing === '') rows.begin();
    } else if (name === 'td' || name === 'th') {
      endCell();
      if (closing === '')
        cell = { text: '', across: span(attributes, 'colspan'), down: span(attributes, 'rowspan') };
    } else if (cell !== null && BREAKS.has(name)) (cell as { text: string }).text += '\n';
  }
  endCell();
  const found = rows.rows.filter((row) => row.length > 0);
  return found.length === 0 ? null : found;
}

/** One line break for any number of them, and no blanks at the ends of lines. */
function tidy(text: string): string {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .join('\n');
}
