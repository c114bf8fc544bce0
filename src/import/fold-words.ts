/** Letters that do not fall apart into a plain one and its accent. */
const OTHER: Readonly<Record<string, string>> = { ß: 'ss', ł: 'l', ø: 'o', æ: 'ae', œ: 'oe', đ: 'd', ı: 'i' };

const SIMPLE = /^[a-z0-9 ]*$/;

/**
 * Words as they are compared: small letters, no accents, anything but letters and digits a single space,
 * words in camel case parted.
 *
 * @example foldWords('Artikel-Nr.') // 'artikel nr'
 * @example foldWords('VKPreis') // 'vk preis'
 */
export function foldWords(text: string): string {
  const parted = text.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2').replace(/(\p{Lu})(\p{Lu}\p{Ll})/gu, '$1 $2');
  return foldText(parted);
}

/** foldWords without parting camel case: for descriptions and part numbers. */
export function foldText(text: string): string {
  const small = text.toLowerCase();
  if (SIMPLE.test(small)) return small.trim();
  return small
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[ßłøæœđı]/g, (letter) => OTHER[letter]!)
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
