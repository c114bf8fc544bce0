import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/notebook/apply-edit.ts';
import type { NotebookDocument, TableCell } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import {
  addCell,
  addColumn,
  addRows,
  entryEdit,
  invert,
  moveCell,
  moveColumn,
  notebookEdit,
  pinEdit,
  removeCell,
  removeColumn,
  removeRows,
  rename,
  replaceCell,
  replaceColumn,
} from '../../src/notebook/edits.ts';
import { findCell, findColumn, isEntered, rowCount } from '../../src/notebook/lookup.ts';
import { movedInWords } from '../../src/notebook/merge-order.ts';
import { partnerDifferences } from '../../src/notebook/merge-partner.ts';
import { slotsOf } from '../../src/notebook/merge-slots.ts';
import { takeEdit, taken } from '../../src/notebook/merge-take.ts';
import { writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { sampleNotebook } from './sample.ts';

const base = sampleNotebook();
const wearOf = (document: NotebookDocument): TableCell => findCell(document, 'wear') as TableCell;

/** A change that a partner might make; one that does not fit the notebook as it stands is left out. */
function changed(document: NotebookDocument, seed: number): NotebookDocument {
  const wear = findCell(document, 'wear');
  const pick = <T>(list: readonly T[]): T => list[seed % list.length]!;
  const makers: readonly (() => Edit)[] = [
    () => notebookEdit(document, pick(['title', 'gist']), `word ${seed}`),
    () => notebookEdit(document, 'measures', pick(['metric', 'imperial'])),
    () => entryEdit(document, 'wear', 'wear-now', seed % Math.max(1, rowCount(wear as TableCell)), seed),
    () =>
      entryEdit(document, 'wear', 'wear-part', seed % Math.max(1, rowCount(wear as TableCell)), `p${seed}`),
    () => addRows(document, 'wear', seed % 4, [{ 'wear-part': `new ${seed}`, 'wear-now': seed }]),
    () => removeRows(document, 'wear', seed % 3, 1),
    () => moveCell(document, pick(document.cells).id, seed % document.cells.length),
    () => removeCell(document, pick(document.cells).id),
    () =>
      addCell(
        document,
        { kind: 'note', id: `note-${seed}`, title: `Note ${seed}`, text: 'words' },
        seed % document.cells.length,
      ),
    () => addColumn(document, 'wear', { id: `c${seed}`, name: `c${seed}`, kind: 'number', entries: [] }, 0),
    () => removeColumn(document, 'wear', 'wear-fitted'),
    () => moveColumn(document, 'wear', 'wear-part', seed % 4),
    () => {
      const now = findColumn(wearOf(document), 'wear-now')!;
      return replaceColumn(document, 'wear', 'wear-now', {
        ...now,
        unit: pick(['cm', 'mm', 'inch']),
      } as typeof now);
    },
    () => rename(document, 'wear', undefined, `wear_${seed}`),
    () => {
      const cell = pick(document.cells);
      return replaceCell(document, cell.id, { ...cell, title: `Called ${seed}` });
    },
    () => {
      const calls = document.cells.find(({ kind }) => kind === 'calls')!;
      return pinEdit(document, calls.id, pick(['Chain', 'Fork seals']), pick(['leave', 'replace', null]));
    },
  ];
  try {
    return applyEdit(
      document,
      pick(makers.map((_, at) => makers[(at + Math.floor(seed / 16)) % makers.length]!))(),
    );
  } catch {
    return document;
  }
}

const changes = fc.array(fc.nat({ max: 4000 }), { maxLength: 8 });
const state = (seeds: readonly number[]): NotebookDocument => seeds.reduce(changed, base);

describe('a partner’s file', () => {
  it('taken whole makes the notebook theirs, taken not at all leaves it, and undo restores it byte for byte', () => {
    let some = 0;
    fc.assert(
      fc.property(changes, changes, (mineSeeds, theirSeeds) => {
        const [mine, theirs] = [state(mineSeeds), state(theirSeeds)];
        const slots = slotsOf(mine, theirs);
        some += slots.length;
        const edit = takeEdit(mine, theirs, slots, 'Taken');
        const merged = applyEdit(mine, edit);
        expect(writeNotebookFile(merged)).toBe(writeNotebookFile({ ...theirs, id: mine.id }));
        expect(slotsOf(merged, theirs)).toEqual([]);
        expect(writeNotebookFile(applyEdit(merged, invert(edit)))).toBe(writeNotebookFile(mine));
        expect(writeNotebookFile(taken(mine, theirs, []))).toBe(writeNotebookFile(mine));
        for (const { words, of } of partnerDifferences(mine, theirs))
          expect(`${of}${words.what}${words.change}`.length).toBeGreaterThan(5);
      }),
      { numRuns: 150 },
    );
    expect(some).toBeGreaterThan(250);
  }, 120_000);

  it('taken one by one changes that one thing, and leaves the others to be taken', () => {
    fc.assert(
      fc.property(changes, changes, fc.nat(), (mineSeeds, theirSeeds, which) => {
        const [mine, theirs] = [state(mineSeeds), state(theirSeeds)];
        const slots = slotsOf(mine, theirs).filter(({ kind }) => kind === 'entry' || kind === 'field');
        const slot = slots[which % Math.max(1, slots.length)];
        if (slot === undefined) return;
        const merged = applyEdit(mine, takeEdit(mine, theirs, [slot], 'Taken'));
        if (slot.kind === 'field') {
          expect(merged).toEqual({ ...mine, [slot.field]: theirs[slot.field] });
          return;
        }
        if (slot.kind !== 'entry') throw new Error('An entry was asked for.');
        const of = (document: NotebookDocument, row: number) => {
          const column = findColumn(findCell(document, slot.cell)!, slot.column)!;
          return isEntered(column) ? column.entries[row] : undefined;
        };
        expect(of(merged, slot.mine)).toEqual(of(theirs, slot.theirs));
        const back = applyEdit(
          merged,
          entryEdit(merged, slot.cell, slot.column, slot.mine, of(mine, slot.mine)!),
        );
        expect(writeNotebookFile(back)).toBe(writeNotebookFile(mine));
      }),
      { numRuns: 150 },
    );
  });

  it('says what differs in words: fields, rows, columns, formulas, calls', () => {
    let theirs = applyEdit(base, entryEdit(base, 'wear', 'wear-now', 0, 2.9));
    theirs = applyEdit(theirs, addRows(theirs, 'wear', 1, [{ 'wear-part': 'Tubes' }]));
    theirs = applyEdit(theirs, removeColumn(theirs, 'wear', 'wear-fitted'));
    theirs = applyEdit(theirs, notebookEdit(theirs, 'title', 'North'));
    const said = partnerDifferences(base, theirs).map(
      ({ of, words }) => `${of}: ${words.what}, ${words.change}`,
    );
    expect(said).toEqual([
      'The notebook: Notebook name, Plateau loop to North',
      'Wear: Wear, fitted, column removed',
      'Wear: Front brake pads, now, 3.1 to 2.9 mm',
      'Wear: Tubes, row added',
    ]);
  });

  it('brings the entries along with a column in another unit, those of my own rows turned', () => {
    const now = findColumn(wearOf(base), 'wear-now')!;
    const inCm = { ...now, unit: 'cm', entries: [0.31, 1.2, null] } as typeof now;
    const theirs = applyEdit(base, replaceColumn(base, 'wear', 'wear-now', inCm));
    const mine = applyEdit(base, addRows(base, 'wear', 3, [{ 'wear-part': 'Tubes', 'wear-now': 25 }]));
    const slots = slotsOf(mine, theirs).filter(({ kind }) => kind === 'column');
    const merged = applyEdit(mine, takeEdit(mine, theirs, slots, 'Taken'));
    expect(findColumn(wearOf(merged), 'wear-now')).toMatchObject({
      unit: 'cm',
      entries: [0.31, 1.2, null, 2.5],
    });
  });

  it('with a common state, leaves out what only I have changed and marks what both have', () => {
    const mine = applyEdit(
      applyEdit(base, entryEdit(base, 'wear', 'wear-now', 0, 3)),
      entryEdit(base, 'wear', 'wear-now', 1, 11),
    );
    const theirs = applyEdit(
      applyEdit(base, entryEdit(base, 'wear', 'wear-now', 1, 10)),
      entryEdit(base, 'wear', 'wear-rate', 0, 0.3),
    );
    const by = (common: NotebookDocument | null) =>
      partnerDifferences(mine, theirs, common).map(({ words, by }) => [words.what, by]);
    expect(by(null)).toHaveLength(3);
    expect(by(base)).toEqual([
      ['Front brake pads, rate', 'theirs'],
      ['Chain, now', 'both'],
    ]);
  });

  it('says which rows, columns and cards stand elsewhere, and where', () => {
    const wear = wearOf(base);
    const parts = (findColumn(wear, 'wear-part') as { entries: readonly string[] }).entries;
    const [first, second, third] = parts;
    const row = Object.fromEntries(
      wear.columns.filter(isEntered).map(({ id, entries }) => [id, entries[0]!]),
    );
    const rowMoved = [
      removeRows(base, 'wear', 0, 1),
      addRows(applyEdit(base, removeRows(base, 'wear', 0, 1)), 'wear', 1, [row]),
    ].reduce(applyEdit, base);
    expect(third).toBeDefined();
    expect(partnerDifferences(base, rowMoved).map(({ words }) => words)).toEqual([
      { what: 'Order', change: `${first} now after ${second}` },
    ]);
    const [a, b] = base.cells;
    const cardMoved = applyEdit(base, moveCell(base, a!.id, 1));
    expect(partnerDifferences(base, cardMoved).map(({ words }) => words.what)).toEqual(['Cards']);
    expect(partnerDifferences(base, cardMoved)[0]!.words.change).toMatch(/ now (first|after) /);
    expect(b).toBeDefined();
  });

  it('names the fewest that moved', () => {
    expect(movedInWords(['a', 'b', 'c', 'd'], [3, 0, 1, 2])).toBe('a now after d');
    expect(movedInWords(['a', 'b', 'c', 'd'], [1, 2, 3, 0])).toBe('d now first');
    expect(movedInWords(['a', 'b', 'c'], [4, 5, 9])).toBe('');
    expect(movedInWords(['a', 'b', 'c', 'd', 'e'], [4, 3, 2, 1, 0])).toMatch(/and 1 more$/);
  });
});
