/** A lit template as plain text without its tags, for tests that run without a page. */
export function flatText(value: unknown): string {
  if (value === null || value === undefined || typeof value === 'symbol') return '';
  if (Array.isArray(value)) return value.map(flatText).join('');
  if (typeof value === 'object' && 'strings' in value && 'values' in value) {
    const { strings, values } = value as { strings: readonly string[]; values: readonly unknown[] };
    const whole = strings.reduce(
      (text, part, at) => text + part + (at < values.length ? flatText(values[at]) : ''),
      '',
    );
    return whole.replace(/<[a-z/][^<>]*>/g, '');
  }
  return String(value);
}
