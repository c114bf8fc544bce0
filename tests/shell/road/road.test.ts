import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../../src/notebook/apply-edit.ts';
import { type Cell, FORMAT, type NotebookDocument, VERSION } from '../../../src/notebook/document.ts';
import { invertEdit } from '../../../src/notebook/invert-edit.ts';
import { openDocument } from '../../../src/notebook/schema.ts';
import { firstCards } from '../../../src/shell/first-cards.ts';
import { jumpTarget, nextFault, stillThere } from '../../../src/shell/page-moves.ts';
import { CARD_KINDS } from '../../../src/shell/road/card-kinds.ts';
import { lanePieces } from '../../../src/shell/road/lanes.ts';
import { moveStop, removeStop } from '../../../src/shell/road/move-stop.ts';
import { newCell } from '../../../src/shell/road/new-cell.ts';
import { linksOf, stopOf, stopsOf } from '../../../src/shell/road/stops.ts';
import { demo } from '../../starter/support.ts';

const note = (id: string): Cell => ({ kind: 'note', id, title: id, text: '' });
const value = (id: string, form?: string): Cell => ({
  kind: 'value',
  id,
  title: id,
  name: id,
  ...(form === undefined ? {} : { form }),
  content: { type: 'number', unit: '', value: 1, control: 'field' },
});
const table = (id: string): Cell => ({
  kind: 'table',
  id,
  title: id,
  name: id,
  columns: [{ id: `${id}_name`, name: 'name', kind: 'text', entries: ['a'] }],
});
const notebook = (...cells: Cell[]): NotebookDocument => ({
  format: FORMAT,
  version: VERSION,
  id: 'n',
  title: 'n',
  gist: '',
  money: 'EUR',
  cells,
});
const ids = (document: NotebookDocument): string => document.cells.map((cell) => cell.id).join('');

describe('the stops of the road', () => {
  const document = notebook(
    note('n'),
    value('a', 'Limits'),
    value('b', 'Limits'),
    value('c', 'Rules'),
    value('d'),
    value('e'),
  );

  it('are one a cell, but one for all values under a form', () => {
    expect(stopsOf(document).map((stop) => `${stop.title}:${stop.cells.length}`)).toEqual([
      'n:1',
      'Limits:2',
      'Rules:1',
      'd:1',
      'e:1',
    ]);
  });

  it('are found by any of their cells', () => {
    expect(stopOf(stopsOf(document), 'b')?.id).toBe('a');
    expect(stopOf(stopsOf(document), 'gone')).toBeUndefined();
    expect(stopOf(stopsOf(document), null)).toBeUndefined();
  });

  it('are linked as their cells are, and not to themselves', () => {
    const stops = stopsOf(document);
    const links: Record<string, { fedBy: string[]; feeds: string[] }> = {
      a: { fedBy: [], feeds: ['b', 'd'] },
      b: { fedBy: ['a'], feeds: ['e'] },
    };
    const limits = stopOf(stops, 'a');
    if (!limits) throw new Error('the form has a stop');
    expect(linksOf(stops, limits, (id) => links[id] ?? { fedBy: [], feeds: [] })).toEqual({
      fedBy: [],
      feeds: ['d', 'e'],
    });
  });
});

describe('a lane', () => {
  it('turns out at what feeds, runs past what lies between, and turns in at the selected card', () => {
    expect(lanePieces(0, 2, [0])).toEqual({
      through: false,
      above: false,
      below: true,
      bendUp: false,
      bendDown: true,
    });
    expect(lanePieces(1, 2, [0])).toEqual({
      through: true,
      above: true,
      below: true,
      bendUp: false,
      bendDown: false,
    });
    expect(lanePieces(2, 2, [0])).toEqual({
      through: false,
      above: true,
      below: false,
      bendUp: true,
      bendDown: false,
    });
    expect(Object.values(lanePieces(3, 2, [0])).some(Boolean)).toBe(false);
  });

  it('has no end in the air: what leaves a stop downwards reaches the next from above', () => {
    fc.assert(
      fc.property(fc.nat(12), fc.uniqueArray(fc.nat(12), { maxLength: 6 }), (selected, all) => {
        const others = all.filter((other) => other !== selected);
        for (let at = 0; at < 12; at++) {
          expect(lanePieces(at + 1, selected, others).above).toBe(lanePieces(at, selected, others).below);
        }
      }),
    );
  });
});

describe('moving a card', () => {
  const document = notebook(note('n'), value('a', 'L'), value('b', 'L'), note('m'), note('o'));
  const move = (id: string, to: number): string => {
    const stop = stopOf(stopsOf(document), id);
    const edit = stop ? moveStop(document, stop, to) : null;
    return edit ? ids(applyEdit(document, edit)) : 'stays';
  };

  it('takes all values of its form along', () => {
    expect(move('a', 0)).toBe('abnmo');
    expect(move('a', 2)).toBe('nmabo');
    expect(move('a', 3)).toBe('nmoab');
    expect(move('o', 1)).toBe('noabm');
    expect(move('n', 1)).toBe('abnmo');
  });

  it('is no edit where nothing would move', () => {
    expect(move('a', 1)).toBe('stays');
    expect(move('n', -4)).toBe('stays');
    expect(move('o', 99)).toBe('stays');
  });

  it('and removing are undone as one step', () => {
    const stop = stopOf(stopsOf(document), 'a');
    if (!stop) throw new Error('the form has a stop');
    const removed = removeStop(document, stop);
    expect(ids(applyEdit(document, removed))).toBe('nmo');
    expect(applyEdit(applyEdit(document, removed), invertEdit(removed))).toEqual(document);
    const moved = moveStop(document, stop, 3);
    if (!moved) throw new Error('the card moves');
    expect(ids(applyEdit(applyEdit(document, moved), invertEdit(moved)))).toBe(ids(document));
  });
});

describe('a new card', () => {
  it('of each kind makes a notebook that opens', () => {
    let document = notebook(table('left'), table('right'));
    for (const { kind } of CARD_KINDS) {
      const made = newCell(kind === 'plan' ? demo() : document, kind);
      if ('needs' in made) throw new Error(made.needs);
      if (kind === 'plan') {
        const whole = demo();
        expect(
          openDocument(JSON.parse(JSON.stringify({ ...whole, cells: [...whole.cells, made.cell] }))),
        ).toHaveProperty('document');
        continue;
      }
      document = { ...document, cells: [...document.cells, made.cell] };
      expect(openDocument(JSON.parse(JSON.stringify(document))), kind).toHaveProperty('document');
    }
  });

  it('says what a pairing, calls and a plan need first', () => {
    expect(newCell(notebook(table('left'), table('right')), 'plan')).toHaveProperty('needs');
    expect(newCell(notebook(), 'pairing')).toEqual({ needs: 'A pairing needs two tables; add them first.' });
    expect(newCell(notebook(), 'calls')).toEqual({
      needs: 'Calls need a pairing of parts with calls; add it first.',
    });
  });

  it('never takes a name that is taken', () => {
    const made = newCell(notebook(value('new_value')), 'value');
    expect('cell' in made && 'name' in made.cell && made.cell.name).toBe('new_value_2');
  });

  it.each(['values', 'legs', 'prices', 'wear'] as const)(
    'of the first %s makes a notebook that opens',
    (way) => {
      const document = notebook(...firstCards(way));
      expect(openDocument(JSON.parse(JSON.stringify(document)))).toHaveProperty('document');
    },
  );
});

describe('moving from card to card', () => {
  const stops = stopsOf(notebook(note('a'), note('b'), note('c'), note('d'), note('e')));
  const from = stops[2];
  if (!from) throw new Error('there are five stops');

  it('goes to the nearest feeder above and the nearest reader below', () => {
    const links = { fedBy: ['a', 'b', 'd'], feeds: ['b', 'd', 'e'] };
    expect(jumpTarget(stops, from, links, 'fedBy')).toBe('b');
    expect(jumpTarget(stops, from, links, 'feeds')).toBe('d');
  });

  it('goes the other way where there is none, and nowhere where nothing is linked', () => {
    expect(jumpTarget(stops, from, { fedBy: ['d'], feeds: ['a'] }, 'fedBy')).toBe('d');
    expect(jumpTarget(stops, from, { fedBy: ['d'], feeds: ['a'] }, 'feeds')).toBe('a');
    expect(jumpTarget(stops, from, { fedBy: [], feeds: [] }, 'feeds')).toBeNull();
  });

  it('goes from fault to fault and round again', () => {
    const document = notebook(value('a'), table('b'));
    const fault = (node: string, row?: number) => ({
      kind: 'units' as const,
      message: 'm',
      place: { node, row },
    });
    const faults = [fault('a'), fault('b.name', 2)];
    const first = nextFault(document, faults, null);
    expect(first).toEqual({ cell: 'a', node: 'a', row: null });
    const second = nextFault(document, faults, first);
    expect(second).toEqual({ cell: 'b', node: 'b.name', row: 2 });
    expect(nextFault(document, faults, second)).toEqual(first);
    expect(nextFault(document, [], null)).toBeNull();
  });

  it('keeps the card when its figure has another name, and nothing when the card is gone', () => {
    const document = notebook(value('a'));
    expect(stillThere(document, { cell: 'a', node: 'a', row: null })).toEqual({
      cell: 'a',
      node: 'a',
      row: null,
    });
    expect(stillThere(document, { cell: 'a', node: 'old', row: null })).toEqual({
      cell: 'a',
      node: null,
      row: null,
    });
    expect(stillThere(document, { cell: 'gone', node: 'a', row: null })).toBeNull();
  });
});
