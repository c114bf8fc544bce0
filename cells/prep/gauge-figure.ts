import { showNumber } from '../../src/formula/show.ts';

/**
 * A reading as a gauge shows it, to be written beside one taken by hand: '' when there is none.
 *
 * @example gaugeFigure(4.9806) // '4.98'
 * @example gaugeFigure(322.31) // '322.3'
 */
export function gaugeFigure(reading: number): string {
  if (Number.isNaN(reading)) return '';
  const size = Math.abs(reading);
  const most = size >= 1000 ? 0 : size >= 10 ? 1 : 2;
  const rounded = Number(reading.toFixed(most));
  return showNumber(rounded);
}
