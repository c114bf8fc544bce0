import * as v from 'valibot';
import { isHostileWord } from '../tables/plain-name.ts';
import { BOUNDS, countWords } from './bounds.ts';
import {
  type Cell,
  type Entry,
  OPTIONAL_PLAN_ROLES,
  PICTURE_ROLES,
  PICTURE_SHAPES,
  PLAN_ROLES,
  type PlanRole,
  type TableColumn,
} from './document.ts';
import { nameRefusal } from './names.ts';
import { PREP_ROLES } from './prep-roles.ts';

/** The shape of every part of a notebook file. What is not listed here is refused, never carried along. */

const text = (most: number) =>
  v.pipe(
    v.string('must be text'),
    v.maxLength(
      most,
      (issue) =>
        `is ${countWords(issue.input.length)} characters long; at most ${countWords(most)} are allowed`,
    ),
  );
const finite = v.pipe(v.number('must be a number'), v.finite('must be a finite number'));
const flag = v.boolean('must be true or false');
const optionalText = (most: number) => v.optional(text(most));

export const id = v.pipe(
  v.string('must be text'),
  v.regex(/^[A-Za-z0-9_.-]{1,80}$/, 'must be 1 to 80 letters, digits, dots, dashes or underscores'),
  v.check((word) => !isHostileWord(word), 'is a word that cannot be used'),
);

const name = v.pipe(
  v.string('must be text'),
  v.check(
    (word) => nameRefusal(word) === null,
    (issue) => `cannot be used: ${nameRefusal(issue.input as string)}`,
  ),
);

/** A word that points at something by name; what it points at may be missing, which the cell then shows. */
const reference = v.pipe(
  v.string('must be text'),
  v.regex(
    /^$|^[A-Za-z]\w{0,59}(\.[A-Za-z]\w{0,59})?$/,
    'must be a plain name, or a table and a column such as wear.rate',
  ),
);

const decimals = v.optional(
  v.pipe(
    finite,
    v.integer('must be a whole number'),
    v.minValue(0, 'must be 0 or more'),
    v.maxValue(12, 'must be 12 or less'),
  ),
);
const unit = text(BOUNDS.unitLength);
const options = v.pipe(
  v.array(text(BOUNDS.titleLength), 'must be a list of texts'),
  v.maxLength(BOUNDS.options, `has more than ${BOUNDS.options} choices`),
  v.check((list) => new Set(list).size === list.length, 'lists one choice twice'),
);

const columnBase = {
  id,
  name,
  title: optionalText(BOUNDS.titleLength),
  unit: v.optional(unit),
  decimals,
  draw: v.optional(v.picklist(['share', 'surface'], "must be 'share' or 'surface'")),
  folded: v.optional(flag),
};

export type EnteredKind = 'number' | 'text' | 'choice' | 'date' | 'yes_no';

/** Why an entry does not belong in a column of this kind; null when it does. */
export function entryRefusal(kind: EnteredKind, entry: unknown): string | null {
  if (entry === null) return null;
  if (typeof entry === 'string') {
    return entry.length > BOUNDS.entryLength
      ? `is ${countWords(entry.length)} characters long; at most ${countWords(BOUNDS.entryLength)} are allowed`
      : null;
  }
  if (typeof entry === 'number' && kind === 'number') {
    return Number.isFinite(entry) ? null : 'must be a finite number';
  }
  if (typeof entry === 'boolean' && kind === 'yes_no') return null;
  const wanted = {
    number: 'a number',
    text: 'text',
    choice: 'text',
    date: 'a date as text',
    yes_no: 'true or false',
  };
  return `must be ${wanted[kind]} or empty`;
}

/** Entries are walked by hand: a schema for each of a million entries would take seconds. */
const entriesOf = (kind: EnteredKind) =>
  v.pipe(
    v.custom<readonly Entry[]>(Array.isArray, 'must be a list of entries'),
    v.rawTransform<readonly Entry[], readonly Entry[]>(({ dataset, addIssue, NEVER }) => {
      const given = dataset.value;
      if (given.length > BOUNDS.rows) {
        addIssue({
          message: `has ${countWords(given.length)} rows; at most ${countWords(BOUNDS.rows)} are allowed`,
        });
        return NEVER;
      }
      for (let row = 0; row < given.length; row += 1) {
        const refusal = entryRefusal(kind, given[row]);
        if (refusal !== null) {
          addIssue({ message: `row ${row + 1} ${refusal}` });
          return NEVER;
        }
      }
      return given.slice();
    }),
  );

const entered = <const K extends EnteredKind>(kind: K) =>
  v.strictObject({
    ...columnBase,
    kind: v.literal(kind),
    options: v.optional(options),
    unit_column: v.optional(reference),
    entries: entriesOf(kind),
  });

const workedColumn = v.strictObject({
  ...columnBase,
  kind: v.literal('worked', "must be 'worked': the columns of a pairing all have formulas"),
  formula: text(BOUNDS.formulaLength),
});

export const columnSchema: v.GenericSchema<unknown, TableColumn> = v.variant(
  'kind',
  [entered('number'), entered('text'), entered('choice'), entered('date'), entered('yes_no'), workedColumn],
  'must be a column',
);

const cellBase = {
  id,
  title: text(BOUNDS.titleLength),
  gist: optionalText(BOUNDS.gistLength),
  source: optionalText(BOUNDS.sourceLength),
};

export const valueContentSchema = v.variant(
  'type',
  [
    v.strictObject({
      type: v.literal('number'),
      unit,
      value: v.nullable(
        v.union(
          [finite, text(BOUNDS.entryLength)],
          'must be a finite number, text that waits to be mended, or empty',
        ),
      ),
      low: v.optional(finite),
      high: v.optional(finite),
      step: v.optional(
        v.pipe(
          finite,
          v.check((step) => step > 0, 'must be above 0'),
        ),
      ),
      decimals,
      control: v.picklist(['field', 'slider'], "must be 'field' or 'slider'"),
    }),
    v.strictObject({ type: v.literal('choice'), options, value: v.nullable(text(BOUNDS.titleLength)) }),
    v.strictObject({ type: v.literal('date'), value: v.nullable(text(BOUNDS.titleLength)) }),
    v.strictObject({ type: v.literal('yes_no'), value: v.nullable(flag) }),
  ],
  'must be a value',
);

/** What is set by hand for each part; `refusal` says why an entry cannot be. */
const byPart = <Held>(refusal: (part: string, held: unknown) => string | null) =>
  v.pipe(
    v.custom<Record<string, Held>>(
      (given) => typeof given === 'object' && given !== null && !Array.isArray(given),
      'must list calls by part',
    ),
    v.rawTransform<Record<string, Held>, Record<string, Held>>(({ dataset, addIssue, NEVER }) => {
      const fresh: Record<string, Held> = {};
      const parts = Object.keys(dataset.value);
      if (parts.length > BOUNDS.pins)
        addIssue({ message: `has more than ${countWords(BOUNDS.pins)} entries` });
      for (const part of parts) {
        const why = refusal(part, dataset.value[part]);
        if (why !== null) addIssue({ message: why });
        else fresh[part] = dataset.value[part]!;
      }
      return dataset.issues ? NEVER : fresh;
    }),
  );

/** Why a call cannot be pinned to a part of this name; null when it can. */
export function pinRefusal(part: string, call: unknown): string | null {
  if (isHostileWord(part)) return `names a part '${part}', a word that cannot be used`;
  if (part.length > BOUNDS.entryLength) return 'names a part with too long a name';
  if (typeof call !== 'string' || call.length > BOUNDS.titleLength) return `holds no call for '${part}'`;
  return null;
}

/** Why these calls cannot be ruled out for a part of this name; null when they can. */
export function forbiddenRefusal(part: string, calls: unknown): string | null {
  if (!Array.isArray(calls)) return `must list the calls forbidden for '${part}'`;
  if (calls.length > BOUNDS.options) return `forbids more than ${BOUNDS.options} calls for '${part}'`;
  if (new Set(calls).size < calls.length) return `forbids one call twice for '${part}'`;
  for (const call of calls) {
    const refusal = pinRefusal(part, call);
    if (refusal !== null) return refusal;
  }
  return null;
}

const columnList = <S extends v.GenericSchema<unknown, TableColumn>>(schema: S) =>
  v.pipe(
    v.array(schema, 'must be a list of columns'),
    v.maxLength(BOUNDS.columns, `has more than ${BOUNDS.columns} columns`),
  );

const noteCell = v.strictObject({
  ...cellBase,
  kind: v.literal('note'),
  text: text(BOUNDS.noteLength),
  caution: v.optional(flag),
});
const valueCell = v.strictObject({
  ...cellBase,
  kind: v.literal('value'),
  name,
  form: optionalText(BOUNDS.titleLength),
  content: valueContentSchema,
});
const formulaCell = v.strictObject({
  ...cellBase,
  kind: v.literal('formula'),
  name,
  formula: text(BOUNDS.formulaLength),
  unit: v.optional(unit),
  decimals,
});
const tableCell = v.strictObject({
  ...cellBase,
  kind: v.literal('table'),
  name,
  columns: columnList(columnSchema),
  caution_column: v.optional(reference),
});
const pairingCell = v.strictObject({
  ...cellBase,
  kind: v.literal('pairing'),
  name,
  left: reference,
  right: reference,
  columns: columnList(workedColumn),
});
const tallyFigure = v.strictObject({
  label: text(BOUNDS.titleLength),
  figure: reference,
  limit: v.optional(reference),
  decimals,
  percent: v.optional(flag),
});
const tallyCell = v.strictObject({
  ...cellBase,
  kind: v.literal('tally'),
  figures: v.pipe(
    v.array(tallyFigure, 'must be a list of figures'),
    v.maxLength(BOUNDS.tallyFigures, `has more than ${BOUNDS.tallyFigures} figures`),
  ),
});
const callsCell = v.strictObject({
  ...cellBase,
  kind: v.literal('calls'),
  name,
  pairing: reference,
  part: reference,
  call: reference,
  cost: reference,
  allowed: reference,
  reason: reference,
  critical: reference,
  pins: byPart<string>(pinRefusal),
  forbidden: v.optional(byPart<readonly string[]>(forbiddenRefusal)),
  plan: v.optional(reference),
});
/** A role that a plan can do without may be absent: a file from before there was one reads nothing for it. */
const planRole = (role: PlanRole) =>
  OPTIONAL_PLAN_ROLES.includes(role) ? v.optional(reference, '') : reference;
const planReads = v.strictObject(
  Object.fromEntries(PLAN_ROLES.map((role) => [role, planRole(role)])) as Record<PlanRole, typeof reference>,
);
const planCell = v.strictObject({
  ...cellBase,
  kind: v.literal('plan'),
  name,
  calls: reference,
  reads: planReads,
});

/** References by role, any of which may be left out. */
const readsBy = <const R extends string>(roles: readonly R[]) =>
  v.strictObject(
    Object.fromEntries(roles.map((role) => [role, v.optional(reference)])) as Record<
      R,
      v.OptionalSchema<typeof reference, undefined>
    >,
  );
const pictureCell = v.strictObject({
  ...cellBase,
  kind: v.literal('picture'),
  shape: v.picklist(PICTURE_SHAPES, `must be one of ${PICTURE_SHAPES.join(', ')}`),
  reads: readsBy(PICTURE_ROLES),
  figures: v.pipe(
    v.array(reference, 'must be a list of names'),
    v.maxLength(BOUNDS.tallyFigures, `has more than ${BOUNDS.tallyFigures} figures`),
  ),
  one: optionalText(BOUNDS.entryLength),
});
const prepCell = v.strictObject({
  ...cellBase,
  kind: v.literal('prep'),
  calls: reference,
  reads: readsBy(PREP_ROLES),
});

export const cellSchema: v.GenericSchema<unknown, Cell> = v.variant(
  'kind',
  [
    noteCell,
    valueCell,
    formulaCell,
    tableCell,
    pairingCell,
    tallyCell,
    callsCell,
    planCell,
    pictureCell,
    prepCell,
  ],
  'must be a cell',
);

const currency = v.pipe(
  v.string('must be text'),
  v.regex(/^[A-Z]{3}$/, 'must be a currency code of three capitals, such as EUR'),
);

export const documentFields = {
  id,
  title: text(BOUNDS.titleLength),
  gist: text(BOUNDS.gistLength),
  money: currency,
  measures: v.optional(
    v.picklist(['metric', 'imperial', 'imperial_uk'], 'must be metric, imperial or imperial_uk'),
  ),
  shown_money: v.optional(currency),
};
