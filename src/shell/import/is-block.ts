/** More than one line, with something that parts its fields: a word that was copied is no block. */
export function isBlock(text: string): boolean {
  const lines = text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== '');
  return lines.length > 1 && lines.filter((line) => /[\t;,|]/.test(line)).length > lines.length / 2;
}
