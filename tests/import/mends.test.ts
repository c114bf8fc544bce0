import { describe, expect, test } from 'vitest';
import { type ImportSession, openSession } from '../../src/import/import-session.ts';
import { finish } from '../../src/import/in-steps.ts';
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
