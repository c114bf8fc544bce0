/** Letters, digits and what stands between them in prose; nothing that Markdown or HTML reads as a sign, but for stress. */
const PROSE = /^[\p{L}\p{N} .,;:!?()’‘“”'–−+=%/…*-]+$/u;
/** What a line may begin with without being anything but prose. */
const BEGINNING = /^\*{0,2}\p{L}/u;
const ITEM = /^- (?=\*{0,2}\p{L})/u;
/** Stress that begins and ends at words: `*so*` and `**so.**`. */
const STRESS = /(?<=^|[ (])(\*\*?)(?=[\p{L}\p{N}])([^*]*[\p{L}\p{N}.,:;!?)])\1(?=$|[ .,;:!?)])/gu;

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
