import { describe, expect, test } from 'vitest';
import { editForCall, editForForbidding, forbidRefusal, pinRefusal } from '../../../cells/calls/call-pin.ts';
import { callOfKind, readCalls } from '../../../cells/calls/calls-reading.ts';
import type { CallsCell } from '../../../src/notebook/document.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { partWith, withCosts } from './parts-and-calls.ts';

const tyre = {
  part: 'Front tyre',
  costs: [12, 150, 76, 90, 106, null],
  bars: ['past the risk limit', '', '', '', '', 'no shop before it'],
};

describe('a call set by hand', () => {
  test('is refused with the reason where it is not allowed', async () => {
    const part = await partWith(tyre);
    const refusal = pinRefusal(part, callOfKind(part, 'leave'), 'leave');
    expect(refusal).toEqual({ part: 'Front tyre', sentence: 'Front tyre, leave: past the risk limit.' });
    expect(pinRefusal(part, callOfKind(part, 'carry'), 'carry')).toBeNull();
  });

  test('is refused where it has no cost, and where there is no such call', async () => {
    const part = await partWith({ part: 'Levers', costs: [44, null] });
    expect(pinRefusal(part, callOfKind(part, 'replace'), 'replace')?.sentence).toBe(
      'Levers, replace now: it has no cost yet. Give the part a price first.',
    );
    expect(pinRefusal(part, null, 'keep')?.sentence).toBe(
      'Levers has no call of the kind replace, keep old.',
    );
  });

  test('is one edit; the proposed call takes the pin away; the same again is none', async () => {
    const document = withCosts([tyre]);
    const live = LiveNotebook.open(document);
    await live.settled();
    const cell = (): CallsCell => live.document.cells.find((each) => each.id === 'decision') as CallsCell;
    const part = () => readCalls(live, cell()).parts[0]!;
    const set = (call: string) =>
      editForCall(live.document, cell(), part(), part().calls.find((each) => each.call === call)!);

    expect(set('carry 1')).toBeNull();
    const pin = set('replace')!;
    expect(pin).toMatchObject({ kind: 'pin', part: 'Front tyre', before: null, after: 'replace' });
    live.apply(pin);
    await live.settled();
    expect(part()).toMatchObject({ byHand: true, chosen: { call: 'replace' } });
    expect(set('replace')).toBeNull();
    expect(set('carry 1')).toMatchObject({ kind: 'pin', before: 'replace', after: null });
    live.dispose();
  });
});

describe('a call ruled out by hand', () => {
  test('gives way to the next, is marked, and is refused when set; ruling it out frees it when it was set', async () => {
    const live = LiveNotebook.open(withCosts([tyre], { 'Front tyre': 'replace' }));
    await live.settled();
    const cell = (): CallsCell => live.document.cells.find((each) => each.id === 'decision') as CallsCell;
    const part = () => readCalls(live, cell()).parts[0]!;
    const called = (name: string) => part().calls.find((each) => each.call === name)!;
    const forbid = (name: string) =>
      live.apply(editForForbidding(live.document, cell(), part(), called(name)));

    expect(part().chosen?.call).toBe('replace');
    forbid('replace');
    forbid('carry 1');
    await live.settled();
    expect(part()).toMatchObject({ byHand: false, chosen: { call: 'carry 2' }, pinned: null });
    expect(called('carry 1').forbidden).toBe(true);
    expect(callOfKind(part(), 'carry')?.call).toBe('carry 2');
    expect(pinRefusal(part(), called('carry 1'), 'carry')?.sentence).toBe(
      'Front tyre, carry a spare: it is forbidden by hand. Allow it again first.',
    );
    forbid('carry 1');
    live.undo();
    live.undo();
    live.undo();
    await live.settled();
    expect(part().chosen?.call).toBe('replace');
    live.dispose();
  });

  test('is refused where it is the last that may be made', async () => {
    const part = await partWith({ part: 'Levers', costs: [44, null], bars: ['', 'no shop'] });
    expect(forbidRefusal(part, callOfKind(part, 'leave'), 'leave')?.sentence).toBe(
      'Levers, leave: it is the only call left that may be made. What holds the others back has to be put right first.',
    );
    expect(forbidRefusal(part, callOfKind(part, 'replace'), 'replace')).toBeNull();
  });
});
