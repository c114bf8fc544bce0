/**
 * Hands a text to the user as a file.
 *
 * @param name with its ending: `plateau-loop-prep.csv`
 * @param type its media type: `text/csv`
 */
export function saveText(name: string, type: string, text: string): void {
  // The mark in front tells desktop sheets that the text is UTF-8.
  const mark = type === 'text/csv' ? '\uFEFF' : '';
  const url = URL.createObjectURL(new Blob([mark + text], { type: `${type};charset=utf-8` }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser reads the address after this turn; a minute is ample on a slow device.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** A title as the name of a file: `Plateau loop` is `plateau-loop`. */
export function fileWord(title: string): string {
  const plain = title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return plain || 'notebook';
}
