const ISO_DATE = /^(\d{4})-(\d{1,2})-(\d{1,2})$/;

/**
 * A calendar date written year first, as YYYY-MM-DD (ISO 8601); null when it is no such date.
 *
 * @example readIsoDate('2026-3-4') // '2026-03-04'
 * @example readIsoDate('2026-02-30') // null
 */
export function readIsoDate(text: string): string | null {
  const parts = ISO_DATE.exec(text.trim());
  if (parts === null) return null;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  // The calendar of Date maps the years 0 to 99 elsewhere, and no notebook needs them.
  if (year < 1000) return null;
  const date = new Date(Date.UTC(year, month - 1, day));
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return null;
  return date.toISOString().slice(0, 10);
}
