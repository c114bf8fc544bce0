import { describe, expect, it } from 'vitest';
import { effectWords } from '../../src/shell/head/effect-words.ts';
import { keptWords } from '../../src/shell/head/kept-words.ts';
import { commandOf, type KeyContext } from '../../src/shell/keyboard.ts';
import type { Effect } from '../../src/shell/session/effect-log.ts';
import { fileName } from '../../src/shell/session/notebook-files.ts';

const effect = (label: string, words: string, limit?: string): Effect => ({
  figure: { label, figure: label, limit },
  difference: words.startsWith('−') ? -1 : words === 'no figure' ? Number.NaN : 1,
  words,
});

describe('what an edit did, in one line', () => {
  it('names the figures of the whole trip first', () => {
    expect(effectWords([effect('Shed hours', '−3.0 h', 'most'), effect('Expected total', '−42 EUR')])).toBe(
      '−42 EUR expected total, −3.0 h shed hours',
    );
  });

  it('leaves out what did not change, and says when nothing did', () => {
    expect(effectWords([effect('Cash', 'no change', 'most'), effect('Pack, kg', '+0.2 kg', 'most')])).toBe(
      '+0.2 kg pack',
    );
    expect(effectWords([effect('Cash', 'no change', 'most')])).toBe('no figure of the tally changed');
    expect(effectWords([effect('Cash', 'no change', 'most')], true)).toBe('being worked out');
    expect(effectWords([effect('Cash', '−3 EUR', 'most')], true)).toBe('−3 EUR cash');
    expect(effectWords([])).toBe('');
    expect(effectWords([], true)).toBe('');
  });

  it('says when a figure was lost', () => {
    expect(effectWords([effect('Expected total', 'no figure')])).toBe('expected total has no figure');
  });

  it('counts what it does not name', () => {
    const many = ['a', 'b', 'c', 'd', 'e'].map((label) => effect(label, '+1 h', 'most'));
    expect(effectWords(many)).toBe('+1 h a, +1 h b, +1 h c, 2 more');
  });
});

describe('the state of keeping, in words', () => {
  it('says where and when', () => {
    expect(keptWords({ kind: 'kept', at: new Date(2026, 2, 14, 9, 5) })).toBe('Kept on this device, 09:05');
    expect(keptWords({ kind: 'keeping' })).toBe('Keeping…');
    expect(keptWords({ kind: 'failed', message: 'full', since: new Date() })).toBe('Not kept');
  });
});

describe('the name of a file', () => {
  it('is the title in plain words', () => {
    expect(fileName('Plateau loop, 2nd')).toBe('plateau-loop-2nd');
    expect(fileName('Großer Bogen')).toBe('großer-bogen');
    expect(fileName('../ ..')).toBe('notebook');
  });
});

describe('the keys of the page', () => {
  const rest: KeyContext = { writing: false, onStop: false, inRoad: false, noLetters: false };
  const key = (
    name: string,
    held: Partial<Record<'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey', boolean>> = {},
  ) => ({
    key: name,
    ctrlKey: false,
    metaKey: false,
    altKey: false,
    shiftKey: false,
    ...held,
  });

  it('undo and redo, with either key, but not while writing', () => {
    expect(commandOf(key('z', { ctrlKey: true }), rest)).toBe('undo');
    expect(commandOf(key('z', { metaKey: true }), rest)).toBe('undo');
    expect(commandOf(key('Z', { ctrlKey: true, shiftKey: true }), rest)).toBe('redo');
    expect(commandOf(key('y', { ctrlKey: true }), rest)).toBe('redo');
    expect(commandOf(key('z', { ctrlKey: true }), { ...rest, writing: true })).toBeNull();
  });

  it('walk the cards, in and out', () => {
    const onStop = { ...rest, onStop: true, inRoad: true };
    expect(commandOf(key('Tab'), onStop)).toBe('next-stop');
    expect(commandOf(key('Tab', { shiftKey: true }), onStop)).toBe('previous-stop');
    expect(commandOf(key('Enter'), onStop)).toBe('enter-card');
    expect(commandOf(key('Tab'), { ...rest, inRoad: true })).toBeNull();
    expect(commandOf(key('Escape'), { ...rest, inRoad: true, writing: true })).toBe('leave-card');
    expect(commandOf(key('Escape'), { ...rest, writing: true })).toBeNull();
  });

  it('move a card with Alt, inside the road alone', () => {
    expect(commandOf(key('ArrowUp', { altKey: true }), { ...rest, inRoad: true })).toBe('move-up');
    expect(commandOf(key('ArrowDown', { altKey: true }), { ...rest, inRoad: true })).toBe('move-down');
    expect(commandOf(key('ArrowDown', { altKey: true }), rest)).toBeNull();
  });

  it.each([
    ['[', 'to-feeder'],
    [']', 'to-reader'],
    ['f', 'next-fault'],
    ['P', 'panel'],
  ])('%s acts at rest, never while writing, and can be switched off', (letter, command) => {
    expect(commandOf(key(letter), rest)).toBe(command);
    expect(commandOf(key(letter), { ...rest, writing: true })).toBeNull();
    expect(commandOf(key(letter), { ...rest, noLetters: true })).toBeNull();
    expect(commandOf(key(letter, { ctrlKey: true }), rest)).toBeNull();
  });
});
