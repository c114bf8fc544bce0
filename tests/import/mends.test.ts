import { describe, expect, test } from 'vitest';
import { type ImportSession, openSession } from '../../src/import/import-session.ts';
import { finish } from '../../src/import/in-steps.ts';
import type { WantedColumn } from '../../src/import/match-table.ts';
import { AS_ROW } from '../../src/import/mends.ts';
import type { ReadChoices } from '../../src/import/reading.ts';
import { bytesOf } from './support.ts';

const LIST = 'Art. no.;Name;Price (EUR);Stock\nA-1;Rear tyre;120,00;3\nA-2;Hub;POA;4\nA-3;;8,50;1\n';

function open(text: string | Uint8Array = LIST, choices: ReadChoices = {}): ImportSession {
  const session = openSession(typeof text === 'string' ? bytesOf(text) : text, choices);
  if ('refusal' in session) throw new Error(session.refusal);
  finish(session.readRows(session.proposeMatch()));
  return session;
}

function readAgain(session: ImportSession, choices: ReadChoices) {
  const read = finish(session.rechoose(choices));
  if ('refusal' in read) throw new Error(read.refusal);
  return finish(session.readRows(session.proposeMatch()));
}

const priced = (session: ImportSession): (number | null)[] =>
  session.takenPage(0, 10).map(({ price }) => price);

describe('what is typed in place', () => {
  test('is read as if the file had it, and the row above it stays', () => {
    const session = open();
    expect(finish(session.mend(2, 'price', '48,50'))).toMatchObject({ aside: 0, lostMends: [] });
    expect(priced(session)).toEqual([120, 48.5, 8.5]);
    finish(session.mend(2, 'price', '49,00'));
    expect(priced(session)).toEqual([120, 49, 8.5]);
    finish(session.mend(3, 'description', 'Valve'));
    expect(session.takenPage(2, 1)[0]).toMatchObject({ description: 'Valve', price: 8.5 });
    expect(session.preview(2, 1)[0]!.fields).toEqual(['A-2', 'Hub', '49,00', '4']);
  });

  test('stays when the file is read another way, as long as its line is the same', () => {
    const session = open();
    finish(session.mend(2, 'price', '48,50'));
    for (const choices of [
      { separator: ';' },
      { decimal: ',' },
      { head: { at: 0, rows: 1 } },
      { letters: 'windows-1252' },
    ] as const) {
      expect(readAgain(session, choices)).toMatchObject({ aside: 0, lostMends: [] });
      expect(priced(session)).toEqual([120, 48.5, 8.5]);
    }
  });

  test('moves with its column when the columns are matched anew', () => {
    const session = open();
    finish(session.mend(2, 'price', '48,50'));
    const roles = { 2: 'ignore', 3: 'price' } as const;
    expect(finish(session.readRows(session.proposeMatch({ roles })))).toMatchObject({ lostMends: [] });
    expect(priced(session)).toEqual([3, 48.5, 1]);
    finish(session.readRows(session.proposeMatch()));
    expect(priced(session)).toEqual([120, 48.5, 8.5]);
  });

  test('does not hold for a line that is read otherwise, says so, and holds again when it is as it was', () => {
    // 0xf6 is ö in Windows-1252 and ц in Windows-1251.
    const bytes = Uint8Array.from(bytesOf(LIST.replace('Hub', 'H?b')), (byte) =>
      byte === 0x3f ? 0xf6 : byte,
    );
    const session = open(bytes, { letters: 'windows-1252' });
    finish(session.mend(2, 'price', '48,50'));
    expect(readAgain(session, { letters: 'windows-1251' })).toMatchObject({
      aside: 1,
      lostMends: [
        {
          line: 3,
          sentence:
            "Line 3: '48,50', typed as its price, no longer applies: the line is read otherwise now. Look at it again.",
        },
      ],
    });
    expect(priced(session)).toEqual([120, 8.5]);
    expect(readAgain(session, { letters: 'windows-1252' })).toMatchObject({ aside: 0, lostMends: [] });
  });

  test('says when no column is left for it', () => {
    const session = open();
    finish(session.mend(3, 'description', 'Valve'));
    const { lostMends } = finish(session.readRows(session.proposeMatch({ roles: { 1: 'ignore' } })));
    expect(lostMends).toEqual([
      {
        line: 4,
        sentence:
          "Line 4: 'Valve', typed as its name, no longer applies: no column is the name now. Choose one.",
      },
    ]);
  });
});

describe('what is typed for a row of a table', () => {
  const LEGS: readonly WantedColumn[] = [
    { name: 'leg', title: 'Leg', kind: 'text' },
    { name: 'surface', title: 'Surface', kind: 'text' },
    { name: 'distance', title: 'Distance', kind: 'number', unit: 'km' },
  ];
  const FILE = 'leg;surface;distance (km)\nA to B;sand;12,5\nB to C;sand;abt 8\nTotal;;20,5\nC to D;gra';

  function session(): ImportSession {
    const opened = openSession(bytesOf(FILE));
    if ('refusal' in opened) throw new Error(opened.refusal);
    return opened;
  }
  const read = (session: ImportSession, wanted = LEGS) => session.readTable(session.matchTable(wanted));
  const distances = ({ columns }: { columns: readonly { name: string; entries: readonly unknown[] }[] }) =>
    columns.find(({ name }) => name === 'distance')?.entries;

  test('mends a field that was not understood, fills in a row that was cut off, and takes a total as a row', () => {
    const one = session();
    const before = read(one);
    expect(distances(before)).toEqual([12.5, 'abt 8']);
    expect(before.aside.map(({ line, reason }) => [line, reason])).toEqual([
      [4, 'total'],
      [5, 'cut-off'],
    ]);
    one.mendTable(before.remarks[0]!.record, { distance: '8,25' });
    one.mendTable(before.aside[1]!.record, { surface: 'gravel', distance: '7' });
    const mended = read(one);
    expect(distances(mended)).toEqual([12.5, 8.25, 7]);
    expect(mended).toMatchObject({ remarks: [], lostMends: [], aside: [{ line: 4 }] });
    one.mendTable(before.aside[0]!.record, {});
    expect(distances(read(one))).toEqual([12.5, 8.25, 20.5, 7]);
    expect(one.preview(4, 1)[0]!.fields).toEqual(['C to D', 'gravel', '7']);
  });

  test('is saved no more once it is mended: only what is still set aside goes into the file of lines', () => {
    const one = session();
    const { aside } = read(one);
    one.mendTable(aside[1]!.record, { distance: '7' });
    read(one);
    expect(one.asideCsv()).toBe(
      'line,reason,leg,surface,distance (km)\r\n4,"It is a total, not a leg.",Total,,"20,5"\r\n',
    );
  });

  test('stays when the file is read another way or goes into another table meanwhile; says when it has no column', () => {
    const one = session();
    one.mendTable(2, { distance: '8,25' });
    finish(one.rechoose({ separator: ';' }));
    expect(read(one, [{ name: 'part', kind: 'text' }]).lostMends).toEqual([]);
    expect(distances(read(one))).toEqual([12.5, 8.25]);
    const apart = one.matchTable(LEGS, { columns: { distance: null } });
    expect(one.readTable(apart).lostMends).toEqual([
      {
        line: 3,
        sentence:
          "Line 3: '8,25', typed as its distance, no longer applies: no column is the distance now. Choose one.",
      },
    ]);
  });
});

test('a line of a price list that only looks like a total is taken as a row', () => {
  const session = open('Art. no.;Name;Price (EUR)\nA-1;Rear tyre;120,00\nA-2;Hub;60,00\nTotal;;180,00\n');
  expect(session.asidePage(0, 9).map(({ reason }) => reason)).toEqual(['total']);
  expect(finish(session.mend(3, AS_ROW, ''))).toMatchObject({ aside: 0, lostMends: [] });
  expect(priced(session)).toEqual([120, 60, 180]);
});
