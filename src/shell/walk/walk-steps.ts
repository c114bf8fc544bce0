import type { Cell, NotebookDocument } from '../../notebook/document.ts';

/** One stop of the walk over the screen. */
export interface WalkStep {
  readonly title: string;
  readonly words: string;
  /** What is shown: the tally, or the card of a cell; null for the page as a whole. */
  readonly at: 'tally' | { readonly cell: string } | null;
}

type Finder = (cells: readonly Cell[]) => Cell | undefined;

const ofKind =
  (kind: Cell['kind']): Finder =>
  (cells) =>
    cells.find((cell) => cell.kind === kind);

/** A table that something is measured in: it carries the caution triangle for critical rows. */
const withCaution: Finder = (cells) =>
  cells.find((cell) => cell.kind === 'table' && cell.caution_column !== undefined);

const CARDS: readonly (readonly [Finder, string, string])[] = [
  [
    ofKind('value'),
    'Blue is yours',
    'What stands in blue on a ruled line was written by hand: click it, type, press Enter. All else is black, worked out from it at once. Ctrl+Z takes anything back.',
  ],
  [
    withCaution,
    'Your readings',
    'Measure what you can and write it here: the reading now, the limit, the rate. The triangle marks parts on which more than money hangs; for those the manual and a licensed mechanic decide.',
  ],
  [
    ofKind('picture'),
    'Where it would hurt',
    'Pictures follow every edit. Point at a mark for its figures; click it to see in the panel how they are worked out.',
  ],
  [
    ofKind('calls'),
    'One call for each part',
    'Leave, replace now, carry a spare, replace and keep the old one, or change it on the way. Pick a row for its costs and what would change the call; the keys 1 to 5 set it by hand, 0 goes back, x forbids the call under the cursor.',
  ],
  [
    ofKind('prep'),
    'On paper',
    'What to order by when, what to fit, what to pack, where to look on the road. Print it, or save it as CSV or Markdown.',
  ],
];

/** The walk over a notebook; a stop whose card the notebook does not have is left out. */
export function walkSteps(document: NotebookDocument): readonly WalkStep[] {
  const cards = CARDS.flatMap(([find, title, words]): WalkStep[] => {
    const cell = find(document.cells);
    return cell === undefined ? [] : [{ title, words, at: { cell: cell.id } }];
  });
  return [
    {
      title: 'The sum in sight',
      words:
        'What you spend, carry and work, against your limits. It never scrolls away, and always says what the last edit did.',
      at: 'tally',
    },
    ...cards,
    {
      title: 'That is all',
      words:
        'Change anything: it is a worked example. Your own trip starts under Notebook, New notebook; this walk is there too.',
      at: null,
    },
  ];
}
