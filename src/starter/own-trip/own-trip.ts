import type { Cell, Entry, NotebookDocument, TableCell, ValueCell } from '../../notebook/document.ts';
import { columnNamed, isEntered, rowCount } from '../../notebook/lookup.ts';
import { renameMoney } from '../../notebook/rename-money.ts';
import { beginningNote } from './beginning-note.ts';
import { asksAge, type OwnTripChoices, type TickedPart, type TypedLeg } from './choices.ts';

/** Tables that a file may fill while the trip is begun, by id. */
export const BROUGHT_TABLES = ['route', 'prices', 'suppliers', 'rates_of_exchange'] as const;

/**
 * A notebook of one's own: every formula of the worked example, none of its trip. Tables that were not filled
 * are empty; the sums that were not said keep the example's figure, to be changed.
 *
 * @param example the worked example; its ids and names are those of `defaultNotebook`
 * @param id of the new notebook
 * @example ownTrip(example, { ...NOTHING_CHOSEN, title: 'North' }, 'notebook-1').title // 'North'
 */
export function ownTrip(example: NotebookDocument, choices: OwnTripChoices, id: string): NotebookDocument {
  const bare = renameMoney(example, choices.money);
  const cells = bare.cells.map((cell) => ownCell(cell, choices, bare));
  const title = choices.title.trim() || 'My trip';
  const document = { ...bare, id, title, gist: '', cells };
  const note = beginningNote(document, choices);
  return { ...document, cells: document.cells.map((cell) => (cell.id === note.id ? note : cell)) };
}

function ownCell(cell: Cell, choices: OwnTripChoices, example: NotebookDocument): Cell {
  const brought = Object.hasOwn(choices.brought, cell.id) ? choices.brought[cell.id] : undefined;
  if (cell.kind === 'value') return ownValue(cell, valuesOf(choices));
  if (cell.kind === 'picture' && cell.one !== undefined) {
    const shown = choices.parts.find(({ part }) => part.judgedBy === 'reading')?.part.name;
    const { one: _, ...others } = cell;
    return shown === undefined ? others : { ...cell, one: shown };
  }
  if (cell.kind !== 'table') return cell;
  switch (cell.id) {
    case 'wear':
      return withRows(cell, choices.parts.map(wearRow), {
        source:
          'Parts ticked from the reference data: limits, rates, lives and shapes are planning figures, common practice unless the remark says otherwise; the maker’s manual for the motorcycle overrides every one. Readings and ages: your own.',
      });
    case 'handling':
      return withRows(cell, handlingRows(cell, choices.parts), {
        source:
          'Hints: common practice, no source. Procedure and torques: the maker’s manual for the motorcycle.',
      });
    case 'route':
      return (
        brought ?? withRows(cell, legRows(choices.legs), { gist: 'in riding order', source: 'Your own.' })
      );
    case 'stops':
      return withRows(cell, stopRows(choices, example), { source: 'Your own.' });
    case 'rates_of_exchange':
      return ratesTable(brought ?? cell, choices, brought === undefined);
    case 'prices':
      return brought ?? withoutSuppliers(cell);
    case 'suppliers':
    case 'kits':
    case 'works':
    case 'bags':
      return brought ?? withRows(cell, [], { source: 'Your own.' });
    default:
      return cell;
  }
}

/** Until it is said, the cut-off is this many days away: an empty one would keep every call waiting. */
const DAYS_TO_CUT_OFF = 28;

/** What was said, and the dates that nobody can do without. */
function valuesOf({ values, today }: OwnTripChoices): OwnTripChoices['values'] {
  return { today, cut_off: provisionalCutOff(String(values.today ?? today)), ...values };
}

/**
 * The cut-off that stands until the rider says another.
 *
 * @example provisionalCutOff('2027-02-10') // '2027-03-10'
 */
export function provisionalCutOff(today: string): string {
  const day = new Date(`${today}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() + DAYS_TO_CUT_OFF);
  return day.toISOString().slice(0, 10);
}

function ownValue(cell: ValueCell, values: OwnTripChoices['values']): ValueCell {
  const { content } = cell;
  const said = Object.hasOwn(values, cell.name) ? values[cell.name] : undefined;
  if (content.type === 'number' && typeof said === 'number') {
    // A bound of the example’s slider must not refuse a rider’s own figure.
    const high = content.high !== undefined && said > content.high ? { high: said } : {};
    const low = content.low !== undefined && said < content.low ? { low: said } : {};
    return { ...cell, content: { ...content, value: said, ...low, ...high } };
  }
  return content.type === 'date' && typeof said === 'string'
    ? { ...cell, content: { ...content, value: said } }
    : cell;
}

type Row = Readonly<Record<string, Entry>>;

/** The table with these rows, by column name, and nothing else in its entered columns. */
function withRows(
  table: TableCell,
  rows: readonly Row[],
  words: { readonly gist?: string; readonly source?: string } = {},
): TableCell {
  const columns = table.columns.map((column) =>
    isEntered(column) ? { ...column, entries: rows.map((row) => row[column.name] ?? null) } : column,
  );
  return { ...table, ...words, columns };
}

function wearRow({ part, now, ageKm }: TickedPart): Row {
  const said: Row = part.judgedBy === 'chance' ? {} : asksAge(part) ? { age: ageKm } : { now };
  return { ...part.entries, ...said, remark: part.basis };
}

/** How each part is fitted, as the worked example has it for the same part. */
function handlingRows(example: TableCell, parts: readonly TickedPart[]): Row[] {
  const named = (name: string): readonly Entry[] => {
    const column = columnNamed(example, name);
    return column !== null && isEntered(column) ? column.entries : [];
  };
  const known = named('part');
  return parts.map(({ part }) => {
    const at = part.handledLike === '' ? -1 : known.indexOf(part.handledLike);
    const of = (name: string): Entry => (at === -1 ? null : (named(name)[at] ?? null));
    return {
      part: part.name,
      opens: of('opens'),
      turn: of('turn'),
      hint: of('hint'),
      bag: null,
      carrier: null,
    };
  });
}

/** Legs have names of their own: a stage ridden twice is told apart by a number. */
function legRows(legs: readonly TypedLeg[]): Row[] {
  const met = new Map<string, number>();
  return legs.map((leg, at) => {
    const plain = legName(leg, at);
    const before = met.get(plain) ?? 0;
    met.set(plain, before + 1);
    return {
      leg: before === 0 ? plain : `${plain} (${before + 1})`,
      start_place: leg.start || null,
      end_place: leg.end || null,
      distance: leg.distanceKm,
      surface: leg.surface,
      help_distance: leg.helpKm,
      wait_days: leg.waitDays,
      shop: leg.shop,
    };
  });
}

function legName({ start, end }: TypedLeg, at: number): string {
  if (start !== '' && end !== '') return `${start} to ${end}`;
  return start !== '' ? `From ${start}` : end !== '' ? `To ${end}` : `Leg ${at + 1}`;
}

/** One row a leg; where nobody has said so there is neither fuel nor water, so that no range is too long. */
function stopRows(choices: OwnTripChoices, example: NotebookDocument): Row[] {
  const brought = choices.brought.route;
  if (brought === undefined) {
    return legRows(choices.legs).map((row, at) => ({
      leg: row.leg ?? null,
      fuel: choices.legs[at]!.fuel,
      water: choices.legs[at]!.water,
      days: 1,
    }));
  }
  const column = columnNamed(brought, 'leg');
  const names = column !== null && isEntered(column) ? column.entries : [];
  return example.cells.some((cell) => cell.id === 'stops')
    ? names.map((leg) => ({ leg, fuel: false, water: false, days: 1 }))
    : [];
}

/** The notebook’s own money is worth one of itself; other suppliers’ money has a row to be filled. */
function ratesTable(table: TableCell, choices: OwnTripChoices, isExample: boolean): TableCell {
  const own: Row = { currency: choices.money, worth: 1 };
  const held = isExample ? withRows(table, [own], { source: 'Your own.' }) : table;
  const there = new Set(entriesOf(held, 'currency'));
  const wanted = new Set(entriesOf(choices.brought.suppliers, 'currency'));
  const missing = [...wanted].filter((code) => typeof code === 'string' && !there.has(code));
  const rows = Array.from(
    { length: rowCount(held) },
    (_, at): Row => ({
      currency: entriesOf(held, 'currency')[at] ?? null,
      worth: entriesOf(held, 'worth')[at] ?? null,
    }),
  );
  return withRows(held, [...rows, ...missing.map((currency): Row => ({ currency: currency!, worth: null }))]);
}

function entriesOf(table: TableCell | undefined, name: string): readonly Entry[] {
  const column = table === undefined ? null : columnNamed(table, name);
  return column !== null && isEntered(column) ? column.entries : [];
}

function withoutSuppliers(prices: TableCell): TableCell {
  const empty = withRows(prices, [], { gist: 'every offer, as the suppliers list it', source: 'Your own.' });
  return {
    ...empty,
    columns: empty.columns.map((column) =>
      isEntered(column) && column.name === 'supplier' ? { ...column, options: [] } : column,
    ),
  };
}
