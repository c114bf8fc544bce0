import { micromark } from 'micromark';
import { expect, test } from 'vitest';
import { CHARACTER_NAMES, decodeNamedCharacterReference } from '../../../cells/note/named-characters.ts';

/** Written out by micromark, in Node with the whole list of HTML, and its escapes undone. */
function asHtmlHasIt(name: string): string {
  const inside = micromark(`x&${name};x`).replace(/^<p>x|x<\/p>$/g, '');
  return inside.replace('&lt;', '<').replace('&gt;', '>').replace('&quot;', '"').replace('&amp;', '&');
}

test('every character is the one that HTML gives that name', () => {
  expect(CHARACTER_NAMES.length).toBeGreaterThan(50);
  for (const name of CHARACTER_NAMES)
    expect(`${name} ${decodeNamedCharacterReference(name)}`).toBe(`${name} ${asHtmlHasIt(name)}`);
});

test.each(['constructor', '__proto__', 'toString', 'ClockwiseContourIntegral', ''])(
  'no character is called %j here',
  (name) => {
    expect(decodeNamedCharacterReference(name)).toBe(false);
  },
);
