import type { AsideReason } from './price-row.ts';

/** Sentences for what is set aside; `shown` is the price field, shortened and quoted. */
const SENTENCES: Readonly<Record<AsideReason, (shown: string, noun: string) => string>> = {
  'no-price': (shown) =>
    shown === "''"
      ? 'It has no price. Type one to take it.'
      : `It has no price: ${shown}. Type one to take it.`,
  'on-request': (shown) => `Its price is on request: ${shown}. Ask the supplier and type it.`,
  'two-prices': (shown) => `It has two prices in one field: ${shown}. Type the one that holds.`,
  'price-range': (shown) => `Its price is a range: ${shown}. Type the one that holds.`,
  'from-price': (shown) => `Its price is only a bound: ${shown}. Type the price of this part.`,
  'zero-price': (shown) => `Its price is nought: ${shown}. Type one if it has a price.`,
  'below-zero': (shown) => `Its price is below nought: ${shown}. Type the price of this part.`,
  'either-mark': (shown) =>
    `${shown} could be read two ways, with thousands or with decimals. Answer the question on the file's marks.`,
  'spoilt-number': (shown) =>
    `Its price was spoilt by a sheet program: ${shown}. Ask the supplier and type it.`,
  'letter-in-figure': (shown) =>
    `Its price has a letter in the place of a digit: ${shown}. Say whether the digit is meant, or type the price.`,
  'not-a-price': (shown) => `${shown} is not a price. Type one to take it.`,
  'quantity-scale': (shown) =>
    `Its price depends on the quantity (here ${shown}). Say for how many pieces the price is wanted.`,
  'other-quantity': (shown) => `Its price ${shown} is for another quantity than the one chosen.`,
  'cut-off': () =>
    'The row ends before its price: the file may be cut off here. Ask for it again, or fill the row in.',
  'no-name': () => 'It has neither a part number nor a description. Type one of them to take it.',
  'follows-on': () => 'It goes on with the row above and has no price of its own.',
  heading: (shown) => `It is a heading between the rows: where its price should be stands ${shown}.`,
  empty: () => 'It is an empty row.',
  section: () => 'It is a heading over the rows that follow.',
  total: (_, noun) => `It is a total, not ${noun}.`,
  note: (_, noun) => `It is a note below the rows, not ${noun}.`,
  setting: (_, noun) =>
    `It looks like a setting with its figure, not ${noun}: it has a name where the others have a number, and most of what they have is missing.`,
  'head-again': () => 'It is the header once more.',
};

/**
 * Why a row is set aside, in a sentence or two.
 *
 * @param field the field of the price as the file has it
 * @param noun what a row of the table is, with its article
 * @example asideSentence('on-request', 'POA') // "Its price is on request: 'POA'. Ask the supplier and type it."
 */
export function asideSentence(reason: AsideReason, field: string, noun = 'an offer'): string {
  const bare = field.replace(/\s+/g, ' ').trim();
  return SENTENCES[reason](`'${bare.length > 40 ? `${bare.slice(0, 39)}…` : bare}'`, noun);
}
