import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { chancesFrom, leftShare, type PlainPart, stillFit } from './plain-model.ts';
import { callsOf, legCostsOf, partOf, reachOf, rowsOf } from './plain-trip.ts';
import { byCall, demo, ofPart, opened, valuesOf, withPartFigure, wordOfPart } from './support.ts';

/**
 * Spares that the like parts of two bikes share, by plain loops that walk both bikes leg by leg together and share
 * no code with src: the state is the leg on which each bike's part was fitted, and how many spares are left.
 */
const PARTS = ['Clutch cable', 'Rear tyre', 'Fuel pump'] as const;
const document = PARTS.reduce((doc, part) => withPartFigure(doc, part, 'bikes', 2), demo());
const values = valuesOf(document);
const DAYS_LEFT = 19; // 12 April to 1 May
const row = (part: string) => rowsOf('wear.csv').find((one) => one.part === part)!;

let notebook: LiveNotebook;
beforeAll(async () => {
  notebook = await opened(document);
});
afterAll(() => notebook.dispose());

/** Cost on the road, spares used and chance of a recovery for two bikes that carry so many spares together. */
function walked(part: string, spares: number): { cost: number; used: number; needs: number } {
  const costs = legCostsOf(row(part), values, DAYS_LEFT);
  const reach = reachOf(row(part).wear_class!, values);
  const legs = reach.length - 1;
  const old = partOf(row(part), values);
  const fresh: PlainPart = { ...old, allowance: old.fullAllowance, readingError: 0, ageKm: 0 };
  /** Chances on each leg of what was fitted at the end of leg `from`; 0 is the part now on the bike. */
  const tables = reach.map((_, from) => chancesFrom(from === 0 ? old : fresh, reach, from));
  /** Chance that it lasts to the end of each leg. */
  const lasting = reach.map((start, from) =>
    reach.map((end) => (end < start ? 1 : stillFit(from === 0 ? old : fresh, end - start))),
  );
  const wornNeeds = row(part).worn_strands === 'yes' ? 1 : 0;
  const spareNeeds = row(part).roadside === 'yes' ? 0 : 1;
  const sum = { cost: 0, used: 0, needs: 0 };
  /** Chance of each state, by "fitted, fitted, spares left", and how much of it has needed no recovery yet. */
  let states = new Map([[`0 0 ${spares}`, { chance: 1, fine: 1 }]]);
  for (let leg = 1; leg <= legs; leg += 1) {
    const next = new Map<string, { chance: number; fine: number }>();
    for (const [key, { chance, fine }] of states) {
      const [a, b, left] = key.split(' ').map(Number) as [number, number, number];
      const fates = [a, b].map((from) => {
        const [worn, sudden] = [tables[from]!.worn[leg]!, tables[from]!.sudden[leg]!];
        const here = lasting[from]![leg - 1]!;
        // The chances are those seen at the fitting: of the parts that have lasted so far, this share.
        return here > 0 ? [1 - (worn + sudden) / here, worn / here, sudden / here] : [1, 0, 0];
      });
      for (let one = 0; one < 3; one += 1) {
        for (let other = 0; other < 3; other += 1) {
          const share = fates[0]![one]! * fates[1]![other]!;
          if (share === 0) continue;
          let held = left;
          let kept = 1;
          // 2 is sudden, 1 worn: the one that came suddenly has the spare first.
          for (const fate of [one, other].sort((x, y) => y - x)) {
            if (fate === 0) continue;
            const spare = held > 0;
            sum.cost +=
              chance *
              share *
              (spare ? costs.fixed[leg]! : fate === 2 ? costs.sudden[leg]! : costs.worn[leg]!);
            if (spare) sum.used += chance * share;
            kept *= 1 - (spare ? spareNeeds : fate === 2 ? 1 : wornNeeds);
            held -= spare ? 1 : 0;
          }
          const to = `${one > 0 ? leg : a} ${other > 0 ? leg : b} ${held}`;
          const known = next.get(to) ?? { chance: 0, fine: 0 };
          next.set(to, { chance: known.chance + chance * share, fine: known.fine + fine * share * kept });
        }
      }
    }
    states = next;
  }
  sum.needs = 1 - [...states.values()].reduce((all, { fine }) => all + fine, 0);
  return sum;
}

function close(actual: number, wanted: number, what: string): void {
  const off = Math.abs(actual - wanted) / Math.max(1, Math.abs(wanted));
  expect(off, `${what}: ${actual} against ${wanted}`).toBeLessThan(1e-9);
}

describe('a wearing part that two like bikes have', () => {
  it.each(PARTS)('%s: shared spares as by walking both bikes together', (part) => {
    const needs = byCall(notebook, part, 'strand');
    const road = byCall(notebook, part, 'on_road');
    const unused = byCall(notebook, part, 'unused');
    for (const spares of [1, 2, 3]) {
      const plain = walked(part, spares);
      close(road[`carry ${spares}`]!, plain.cost, `${part}, on the road, ${spares}`);
      close(unused[`carry ${spares}`]!, spares - plain.used, `${part}, unused of ${spares}`);
      close(needs[`carry ${spares}`]!, plain.needs, `${part}, recovery with ${spares}`);
    }
  });

  it('is left or replaced on both: twice the pieces, hours, cost on the road and life left', () => {
    const part = 'Clutch cable';
    const { calls, home, landed } = callsOf(row(part), values, DAYS_LEFT);
    for (const call of ['leave', 'replace', 'replace and keep old'] as const) {
      close(byCall(notebook, part, 'on_road')[call]!, 2 * calls[call]!.onRoad, `${call}, on the road`);
      close(byCall(notebook, part, 'left_over')[call]!, 2 * calls[call]!.leftOver, `${call}, left over`);
      // One on each bike, and none of them on the shelf.
      close(byCall(notebook, part, 'cash')[call]!, 2 * calls[call]!.cash, `${call}, cash`);
      close(
        byCall(notebook, part, 'hours')[call]!,
        call === 'leave' ? 0 : 2 * Number(row(part).shed_hours),
        `${call}, hours`,
      );
    }
    expect(byCall(notebook, part, 'needed')).toMatchObject({
      leave: 0,
      replace: 2,
      'carry 1': 1,
      'carry 3': 3,
    });
    close(byCall(notebook, part, 'cash')['carry 1']!, landed, 'one spare for both');
    // Both parts come home with what is left of them, or of what followed, and the spare if it was not needed.
    const left = 2 * (calls.leave!.leftOver as number);
    const kept = byCall(notebook, part, 'unused')['carry 1']! * home * Number(values.shelf_share);
    close(byCall(notebook, part, 'left_over')['carry 1']!, left + kept, 'left over with a spare');
    expect(leftShare(partOf(row(part), values), 0)).toBeGreaterThan(0);
  });

  it('may be called as any other part, and needs a recovery on either bike', () => {
    for (const part of PARTS) {
      expect(wordOfPart(notebook, part, 'wear.guard')).not.toMatch(/bike/);
      expect(Object.values(byCall(notebook, part, 'allowed'))).toContain(1);
    }
    // Either of two: 1 - (1 - p)^2.
    const one = byCall(notebook, 'Fuel pump', 'strand_each').leave!;
    close(byCall(notebook, 'Fuel pump', 'strand').leave!, 1 - (1 - one) ** 2, 'either bike');
    const gone = ofPart(notebook, 'Fuel pump', 'judged');
    close(byCall(notebook, 'Fuel pump', 'gives_up_judged').leave!, 1 - (1 - gone) ** 2, 'gives up on either');
    expect(notebook.faults()).toEqual([]);
  });
});
