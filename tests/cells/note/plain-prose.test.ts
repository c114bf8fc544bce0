import fc from 'fast-check';
import { micromark } from 'micromark';
import { expect, it } from 'vitest';
import { plainProse } from '../../../cells/note/plain-prose.ts';
import { NOTES } from '../../../src/starter/note-cells.ts';

const words = ['worn', 'Chain', 'é', '3', ' ', ' ', '.', ',', ')', ' (', '*', '**', '’', '-', '!', ': '];
const signs = [
  '- ',
  '\n\n',
  '\n',
  '_',
  '1. ',
  '#',
  '`',
  '<b>',
  '&amp;',
  '[a]',
  '\\',
  '"',
  '  \n',
  '\t',
  '=',
  '+ ',
];
const pieces = fc.oneof(
  { weight: 8, arbitrary: fc.constantFrom(...words) },
  { weight: 1, arbitrary: fc.constantFrom('\n\n', '\n\n- ', '\n- ') },
  { weight: 1, arbitrary: fc.constantFrom(...signs) },
);

it('sets what it sets as Markdown does (property)', () => {
  let set = 0;
  fc.assert(
    fc.property(
      fc.constantFrom('Chain', '- worn', '**so**', '*', ''),
      fc.array(pieces, { maxLength: 14 }),
      (first, written) => {
        const text = first + written.join('');
        const found = plainProse(text);
        if (found === null) return;
        set += 1;
        expect(found).toBe(micromark(text));
      },
    ),
    { numRuns: 30_000 },
  );
  expect(set).toBeGreaterThan(500);
});

it.each([
  'A *reading* that moves, **left. Right.** (**so**) on.',
  '**Legs.** Each leg has a length.\n\nAnd:\n\n- by *age*;\n- by chance alone.\n\nThe end.',
])('sets stress and lists: %s', (text) => {
  expect(plainProse(text)).toBe(micromark(text));
});

it.each(['# Legs', '1. first', 'a_b_c', 'two\nlines', '- one\n\n- two', 'x ***y***', 'a* b', '<b>', ''])(
  'leaves %j to the parser',
  (text) => {
    expect(plainProse(text)).toBeNull();
  },
);

it('sets every note of the worked example', () => {
  for (const { text } of Object.values(NOTES)) expect(plainProse(text)).toBe(micromark(text));
});
