import type { NotebookDocument, NoteCell, TableCell } from '../../notebook/document.ts';
import { columnNamed, isEntered, rowCount } from '../../notebook/lookup.ts';
import { isTold, type OwnTripChoices } from './choices.ts';

/** Something that is still to be put in, and where. */
export interface LeftForLater {
  readonly what: string;
  readonly words: string;
}

/**
 * The first note of a notebook of one's own: what it is, and what was left for later when it was begun, so
 * that nothing which is missing is taken for nothing.
 */
export function beginningNote(document: NotebookDocument, choices: OwnTripChoices): NoteCell {
  const list = leftForLater(document, choices)
    .map(({ what, words }) => `- **${what}**: ${words}`)
    .join('\n');
  return {
    id: 'note_what',
    kind: 'note',
    title: 'What this notebook is',
    text: `This is your own trip, under the formulas of the worked example. What stands in blue is yours to change; all else is worked out from it at once. A part or leg of which a figure is missing is not judged: its row says that not enough is known, and the totals leave it out, so they are too low until it is there.\n\nWhen it was begun, this was left for later:\n\n${list}`,
  };
}

/** What is still missing, in words; the dialog shows the same before the notebook is made. */
export function leftForLater(document: NotebookDocument, choices: OwnTripChoices): readonly LeftForLater[] {
  const table = (id: string): TableCell | undefined =>
    document.cells.find((cell): cell is TableCell => cell.id === id && cell.kind === 'table');
  return [
    ...datesLeft(choices),
    ...sumsLeft(document, choices),
    ...partsLeft(choices),
    ...legsLeft(table('route')),
    ...pricesLeft(table('prices'), table('suppliers'), table('rates_of_exchange')),
    {
      what: 'Kits, fuel and water',
      words:
        'what suppliers sell as kits, and which places have fuel and water: none is counted on until Fuel and water says so.',
    },
  ];
}

function datesLeft({ values }: OwnTripChoices): LeftForLater[] {
  if (values.cut_off !== undefined) return [];
  return [{ what: 'The cut-off', words: 'it stands four weeks from that day until you write your own.' }];
}

function sumsLeft({ cells }: NotebookDocument, { values }: OwnTripChoices): LeftForLater[] {
  const open = cells.filter(
    (cell) => cell.kind === 'value' && cell.content.type === 'number' && !Object.hasOwn(values, cell.name),
  );
  if (open.length === 0) return [];
  const titles = open.map(({ title }) => title).join('; ');
  return [{ what: 'Figures of the worked example', words: `these still stand: ${titles}.` }];
}

function partsLeft({ parts }: OwnTripChoices): LeftForLater[] {
  if (parts.length === 0) return [{ what: 'The parts', words: 'add rows to Wear.' }];
  const open = parts.filter((ticked) => !isTold(ticked));
  if (open.length === 0) return [];
  const names = open.map(({ part }) => part.name).join('; ');
  return [{ what: 'Readings and ages', words: `of ${open.length} of ${parts.length} parts: ${names}.` }];
}

const LEG_FIGURES = [
  ['distance', 'length'],
  ['surface', 'surface'],
  ['help_distance', 'distance to help'],
  ['wait_days', 'wait for a part'],
] as const;

function legsLeft(route: TableCell | undefined): LeftForLater[] {
  const rows = route === undefined ? 0 : rowCount(route);
  if (route === undefined || rows === 0)
    return [{ what: 'The legs', words: 'add rows to Legs, or import a track.' }];
  const empty = LEG_FIGURES.flatMap(([name, words]) => {
    const gaps = gapsIn(route, name);
    return gaps === 0 ? [] : [`${words} of ${gaps === rows ? 'every leg' : `${gaps} of ${rows} legs`}`];
  });
  return empty.length === 0 ? [] : [{ what: 'In the legs', words: `${empty.join(', ')}.` }];
}

function pricesLeft(
  prices: TableCell | undefined,
  suppliers: TableCell | undefined,
  rates: TableCell | undefined,
): LeftForLater[] {
  if (prices === undefined || rowCount(prices) === 0)
    return [
      {
        what: 'Prices',
        words: 'import a supplier’s list; until then a call that buys something has no cost.',
      },
    ];
  const left: LeftForLater[] = [];
  if (gapsIn(suppliers, 'usual_order') + gapsIn(suppliers, 'freight') > 0)
    left.push({ what: 'Suppliers', words: 'freight, usual order, tax and lead time of those that are new.' });
  if (gapsIn(rates, 'worth') > 0)
    left.push({ what: 'Rates of exchange', words: 'what one of each supplier’s money is worth.' });
  return left;
}

function gapsIn(table: TableCell | undefined, name: string): number {
  const column = table === undefined ? null : columnNamed(table, name);
  return column !== null && isEntered(column) ? column.entries.filter((entry) => entry === null).length : 0;
}
