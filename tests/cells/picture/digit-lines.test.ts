import { expect, test } from 'vitest';
import { DIGIT_LINES, figureLines } from '../../../cells/picture/digit-lines.ts';

/** Every point that a digit's lines go through, from its middle. */
function pointsOf(lines: string): [number, number][] {
  let [x, y] = [0, 0];
  let start: [number, number] = [0, 0];
  const points: [number, number][] = [];
  for (const [, command = '', rest = ''] of lines.matchAll(/([a-z])([^a-z]*)/g)) {
    const figures = [...rest.matchAll(/-?\d*\.?\d+/g)].map(Number);
    if (command === 'z') [x, y] = start;
    const step = { m: 2, l: 2, h: 1, v: 1, a: 7, z: 1 }[command];
    if (step === undefined) throw new Error(`The lines have a command ${command}.`);
    for (let at = 0; at < figures.length; at += step) {
      const last = figures.slice(at, at + step);
      x += command === 'v' ? 0 : last.at(command === 'h' ? -1 : -2)!;
      y += command === 'h' ? 0 : last.at(-1)!;
      points.push([x, y]);
    }
    if (command === 'm') start = [x, y];
  }
  return points;
}

test('each of the ten digits has lines of its own, within its box', () => {
  expect(new Set(DIGIT_LINES).size).toBe(10);
  for (const lines of DIGIT_LINES) {
    for (const [x, y] of pointsOf(lines)) {
      expect(Math.abs(x), lines).toBeLessThanOrEqual(2.7);
      expect(Math.abs(y), lines).toBeLessThanOrEqual(3.9);
    }
  }
});

test('a figure stands in the middle of its place, digit by digit from left to right', () => {
  const [one, seven] = [DIGIT_LINES[1], DIGIT_LINES[7]];
  expect(figureLines('7', 20, 10)).toBe(`M20 10${seven}`);
  // Digits are 7.2 px apart: two of them 3.6 px to either side of the middle.
  expect(figureLines('17', 20, 10)).toBe(`M16.4 10${one}M23.6 10${seven}`);
});
