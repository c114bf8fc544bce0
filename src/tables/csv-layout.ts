export type Separator = ',' | ';' | '\t' | '|';

export interface CsvLayout {
  /** The text with every line break outside quotes written as \n; breaks inside quotes stay as they are. */
  readonly text: string;
}

/**
 * Walks a CSV text once, before it is parsed, for what a parser passes over in silence: a quote that is never
 * closed (it would swallow the rest of the file), and line breaks of several kinds in one file (it would glue
 * rows together).
 *
 * @returns the text with one kind of line break, or the line (from 1) on which a broken quote began
 */
export function layOut(text: string, separator: Separator): CsvLayout | { readonly quoteFromLine: number } {
  const pieces: string[] = [];
  let copied = 0;
  let line = 1;
  let fieldStart = true;
  let at = 0;
  while (at < text.length) {
    const sign = text[at]!;
    if (sign === '"' && fieldStart) {
      const end = endOfQuoted(text, at, separator);
      if (end === -1) return { quoteFromLine: line };
      line += breaksIn(text, at, end);
      at = end;
      fieldStart = false;
    } else if (sign === '\r' || sign === '\n') {
      const width = sign === '\r' && text[at + 1] === '\n' ? 2 : 1;
      pieces.push(text.slice(copied, at), '\n');
      at += width;
      copied = at;
      line += 1;
      fieldStart = true;
    } else {
      fieldStart = sign === separator;
      at += 1;
    }
  }
  pieces.push(text.slice(copied));
  return { text: pieces.join('') };
}

/** Just past the closing quote of the field that opens at `start`; -1 when it is not closed as it should be. */
function endOfQuoted(text: string, start: number, separator: Separator): number {
  let at = start + 1;
  for (;;) {
    const quote = text.indexOf('"', at);
    if (quote === -1) return -1;
    if (text[quote + 1] !== '"') {
      const next = text[quote + 1];
      const closes = next === undefined || next === separator || next === '\r' || next === '\n';
      return closes ? quote + 1 : -1;
    }
    at = quote + 2;
  }
}

/** Line breaks in a stretch of text: CR LF, CR and LF count one each. */
export function breaksIn(text: string, from = 0, to = text.length): number {
  let breaks = 0;
  for (let at = from; at < to; at += 1) {
    const sign = text[at];
    if (sign === '\n' || (sign === '\r' && text[at + 1] !== '\n')) breaks += 1;
  }
  return breaks;
}
