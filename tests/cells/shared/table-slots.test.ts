import fc from 'fast-check';
import { expect, test } from 'vitest';
import { RowSlots } from '../../../cells/shared/table-slots.ts';

test('the example of its docblock: rows that stay keep theirs, a new one takes over from one that went', () => {
  const slots = new RowSlots();
  expect(slots.take([0, 1, 2])).toEqual([0, 1, 2]);
  expect([...slots.renewed]).toEqual([]);
  expect(slots.take([1, 2, 3])).toEqual([1, 2, 0]);
  expect([...slots.renewed]).toEqual([3]);
});

test('after a leap the rows take over in their order, so that no element has to move', () => {
  const slots = new RowSlots();
  slots.take([0, 1, 2]);
  expect(slots.take([700, 701, 702])).toEqual([0, 1, 2]);
});

test('wherever one scrolls, no two rows share a slot, and none that stays gets another', () => {
  const view = fc.uniqueArray(fc.nat(60), { minLength: 1, maxLength: 20 });
  fc.assert(
    fc.property(fc.array(view, { minLength: 1, maxLength: 12 }), (views) => {
      const slots = new RowSlots();
      let before = new Map<number, number>();
      for (const rows of views) {
        const taken = slots.take(rows);
        expect(new Set(taken).size).toBe(rows.length);
        const now = new Map(rows.map((row, i) => [row, taken[i]!]));
        for (const [row, slot] of before) if (now.has(row)) expect(now.get(row)).toBe(slot);
        // Those told as renewed are those whose slot was another row's the time before.
        const others = rows.filter((row) => !before.has(row) && [...before.values()].includes(now.get(row)!));
        expect([...slots.renewed].sort()).toEqual(others.sort());
        before = now;
      }
    }),
  );
});
