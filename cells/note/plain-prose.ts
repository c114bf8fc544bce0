/**
 * Letters of Latin scripts (Unicode's blocks up to Latin Extended-B). Written out: the classes \p{L} and \p{N} take a
 * browser 6 ms to make ready, in which a page opens. A note in other letters goes by the parser.
 */
const LETTER = 'A-Za-z\u00c0-\u00d6\u00d8-\u00f6\u00f8-\u024f';
/** What prose is made of; nothing that Markdown or HTML reads as a sign, but for stress. */
const PROSE = new RegExp(`^[${LETTER}0-9 .,;:!?()’‘“”'–−+=%/…*-]+$`);
/** What a line may begin with without being anything but prose. */
const BEGINNING = new RegExp(`^\\*{0,2}[${LETTER}]`);
const ITEM = new RegExp(`^- (?=\\*{0,2}[${LETTER}])`);
/** Stress that begins and ends at words: `*so*` and `**so.**`. */
const STRESS = new RegExp(
  `(?<=^|[ (])(\\*\\*?)(?=[${LETTER}0-9])([^*]*[${LETTER}0-9.,:;!?)])\\1(?=$|[ .,;:!?)])`,
  'g',
);

/**
 * A note of plain paragraphs and lists as HTML, the same as Markdown's: most notes are no more than that, and are
 * then there without its parser. Null for any other.
 *
 * @example plainProse('Fit *both*.') // '<p>Fit <em>both</em>.</p>'
 * @example plainProse('# Legs') // null
 */
export function plainProse(text: string): string | null {
  const set: string[] = [];
  let afterList = false;
  for (const block of text.split('\n\n')) {
    const lines = block.split('\n');
    const isList = lines.every((line) => ITEM.test(line));
    // Two lists with a blank line between are one, with more room.
    if (isList ? afterList : lines.length > 1 || !BEGINNING.test(block)) return null;
    afterList = isList;
    const stressed = lines.map((line) => stress(line.replace(ITEM, '')));
    if (stressed.includes(null)) return null;
    set.push(
      isList
        ? `<ul>\n${stressed.map((line) => `<li>${line}</li>`).join('\n')}\n</ul>`
        : `<p>${stressed.join('')}</p>`,
    );
  }
  return set.join('\n');
}

function stress(line: string): string | null {
  if (!PROSE.test(line) || line.endsWith(' ')) return null;
  const set = line.replace(STRESS, (_whole, stars: string, words: string) =>
    stars === '*' ? `<em>${words}</em>` : `<strong>${words}</strong>`,
  );
  return set.includes('*') ? null : set;
}
