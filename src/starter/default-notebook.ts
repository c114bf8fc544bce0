import { FORMAT, type NotebookDocument, VERSION } from '../notebook/document.ts';
import { callsCells } from './calls-cells.ts';
import { fluidCells } from './fluid-cells.ts';
import { NOTES } from './note-cells.ts';
import { costPictures, riskPicture, spendingPicture } from './picture-cells.ts';
import { prepCells } from './prep-cells.ts';
import { priceCells } from './price-cells.ts';
import { rideCells } from './ride-cells.ts';
import { routeCells } from './route-cells.ts';
import { shedAndBagCells } from './shed-and-bag-cells.ts';
import { takenCells } from './taken-cells.ts';
import { tallyCell, totalsCells } from './totals-cells.ts';
import type { TripFiles } from './trip-file.ts';
import { tripValues } from './trip-values.ts';
import { wearCells } from './wear-cells.ts';

/**
 * The notebook that opens on a first visit: the whole method of the calls, written in the notebook's own
 * formulas, over an invented trip.
 * @param files texts of datasets/plateau-loop by file name, such as `route.csv`.
 * @returns a document with the same ids every time. Throws Error naming a trip file that is absent or ragged.
 * @example defaultNotebook(files).cells.find((cell) => cell.id === 'wear')?.kind // 'table'
 */
export function defaultNotebook(files: TripFiles): NotebookDocument {
  return {
    format: FORMAT,
    version: VERSION,
    id: 'plateau_loop',
    title: 'Plateau loop',
    gist: 'an invented trip, Port Ansel and back',
    money: 'EUR',
    cells: [
      NOTES.what,
      NOTES.cautions,
      tallyCell(),
      ...tripValues(),
      NOTES.route,
      ...routeCells(files),
      NOTES.wear,
      ...wearCells(files),
      NOTES.brakes,
      NOTES.prices,
      ...priceCells(files),
      ...shedAndBagCells(files),
      NOTES.ride,
      ...rideCells(),
      riskPicture(),
      NOTES.calls,
      ...callsCells(),
      spendingPicture(),
      NOTES.totals,
      ...totalsCells(),
      ...costPictures(),
      NOTES.fluids,
      ...fluidCells(files),
      NOTES.prep,
      ...prepCells(),
      ...takenCells(),
    ],
  };
}
