/**
 * The fields of a record as its raw text has them: parted by the separator, held by double quotes where a field
 * has the separator, a quote or a line break in it.
 *
 * @example rawFields('NG-9;"Hub; rear";POA', ';') // ['NG-9', 'Hub; rear', 'POA']
 */
export function rawFields(raw: string, separator: string): string[] {
  const fields: string[] = [];
  let at = 0;
  while (at <= raw.length) {
    if (raw[at] === '"' && closes(raw, at, separator) !== -1) {
      const end = closes(raw, at, separator);
      fields.push(raw.slice(at + 1, end).replaceAll('""', '"'));
      at = end + 2;
      continue;
    }
    const next = raw.indexOf(separator, at);
    fields.push(raw.slice(at, next === -1 ? raw.length : next));
    at = next === -1 ? raw.length + 1 : next + 1;
  }
  return fields;
}

/** Where the quote that opens at `from` closes, before a separator or the end; -1 when it does not. */
function closes(raw: string, from: number, separator: string): number {
  for (let at = raw.indexOf('"', from + 1); at !== -1; at = raw.indexOf('"', at + 1)) {
    if (raw[at + 1] === '"') at += 1;
    else return at + 1 === raw.length || raw[at + 1] === separator ? at : -1;
  }
  return -1;
}
