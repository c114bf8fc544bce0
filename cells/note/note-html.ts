import { micromark } from 'micromark';

/** Longest note that is set as Markdown, in characters; the parser slows down steeply past it. */
const MOST_CHARACTERS = 40_000;
/** Most marks and blanks a line may begin with: lists in lists in lists cost time, and nobody reads them. */
const MOST_INDENT = 40;

/**
 * A note's Markdown as HTML that is fit to be put in the page: raw HTML in the note is shown as text, links
 * that could act are dropped by the parser, images are replaced by their words (a picture fetched from
 * elsewhere would tell that the notebook was opened), headings start at level 3 under the card's own.
 *
 * Returns null for a note too long or too deeply nested to be set; it is then shown as plain text.
 *
 * @example noteHtml('*Check* the limits') // '<p><em>Check</em> the limits</p>'
 */
export function noteHtml(text: string): string | null {
  if (text.length > MOST_CHARACTERS || isTooDeep(text)) return null;
  // Every < and > left in this output was written by the parser: those in the note are escaped by it.
  return micromark(text)
    .replace(/<img src="[^"]*" alt="([^"]*)"(?: title="[^"]*")? \/>/g, '$1')
    .replace(
      /<(\/?)h([1-6])>/g,
      (_whole, slash: string, level: string) => `<${slash}h${Math.min(6, Number(level) + 2)}>`,
    )
    .replace(/<a href="/g, '<a target="_blank" rel="noopener noreferrer" href="');
}

function isTooDeep(text: string): boolean {
  return text
    .split('\n')
    .some((line) => (/^[\s>*+\-\d.)]*/.exec(line)?.[0].length ?? 0) > MOST_INDENT && line.trim() !== '');
}
