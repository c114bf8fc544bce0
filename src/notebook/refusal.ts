import type * as v from 'valibot';

interface Step {
  readonly key: string | number;
  readonly value: unknown;
}

const PARTS_OF: Readonly<Record<string, string>> = {
  cells: 'cell',
  columns: 'column',
  figures: 'figure',
  options: 'choice',
};

/**
 * The place and the reason of the first thing that a schema found wrong, as one clause.
 *
 * @example "cell 4 'wear', column 'rate': unit must be text"
 */
export function refusalOf(issues: readonly v.BaseIssue<unknown>[]): string {
  const issue = issues[0]!;
  const steps = (issue.path ?? []).map(
    (item): Step => ({ key: item.key as string | number, value: item.value }),
  );
  const { places, field } = placesOf(steps);
  const reason = reasonOf(issue, field);
  return places.length === 0 ? reason : `${places.join(', ')}: ${reason}`;
}

function placesOf(steps: readonly Step[]): { places: string[]; field: string | null } {
  const places: string[] = [];
  let field: string | null = null;
  for (let i = 0; i < steps.length; i += 1) {
    const step = steps[i]!;
    const next = steps[i + 1];
    const part =
      typeof step.key === 'string' && Object.hasOwn(PARTS_OF, step.key) ? PARTS_OF[step.key] : undefined;
    if (part !== undefined && typeof next?.key === 'number') {
      places.push(placeWords(part, next));
      i += 1;
      field = null;
    } else {
      field = field === null ? String(step.key) : `${field}, ${String(step.key)}`;
    }
  }
  return { places, field };
}

function placeWords(part: string, step: Step): string {
  const name = ownText(step.value, 'name') ?? ownText(step.value, 'label') ?? ownText(step.value, 'title');
  if (part === 'column' && name !== null) return `column '${name}'`;
  const number = Number(step.key) + 1;
  return name === null ? `${part} ${number}` : `${part} ${number} '${name}'`;
}

function ownText(value: unknown, key: string): string | null {
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return null;
  const held = (value as Record<string, unknown>)[key];
  return typeof held === 'string' && held !== '' ? held.slice(0, 60) : null;
}

function reasonOf(issue: v.BaseIssue<unknown>, field: string | null): string {
  const words = field === null ? '' : `${field.slice(0, 80)} `;
  if (issue.type === 'strict_object') {
    if (issue.expected === 'never') return `${words}is nothing that this version of Sparewell knows`;
    if (issue.received === 'undefined') return `${words}is missing`;
    return `${words}must be a group of named fields`.trim();
  }
  if (
    issue.type === 'variant' &&
    (issue.path?.at(-1)?.key === 'kind' || issue.path?.at(-1)?.key === 'type')
  ) {
    return `${words}${shown(issue.input)} is not one that this version of Sparewell knows`;
  }
  return `${words}${issue.message}`;
}

function shown(value: unknown): string {
  if (typeof value === 'string') return `'${value.slice(0, 60)}'`;
  return value === undefined ? '(missing)' : String(JSON.stringify(value)).slice(0, 60);
}
