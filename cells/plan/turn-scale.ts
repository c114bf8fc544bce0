import { showNumber, showUnit } from '../../src/formula/show.ts';
import type { CallTurn } from '../../src/notebook/trial/explain-call.ts';
import type { TrialFigure } from '../../src/notebook/trial/trial.ts';

/** One line of "What would change this call", drawn: all places in percent of the line. */
export interface TurnScale {
  readonly nowAt: number;
  readonly postAt: number;
  /** Where the other call has it: hatched. */
  readonly zoneFrom: number;
  readonly zoneTo: number;
  /** Where the two figures stand, kept apart. */
  readonly nowLabelAt: number;
  readonly postLabelAt: number;
  readonly nowShown: string;
  readonly postShown: string;
  /** `above 33.30 EUR`, and why where it is not the cost. */
  readonly words: string;
}

/** Figures closer than this on the line would print over each other. */
const APART = 30;
/** The line goes on behind the larger of the two figures. */
const BEYOND = 1.35;

const FIGURE_WORDS: Readonly<Record<TrialFigure, string>> = {
  price: 'Price of one',
  stranding: 'Recovery and waiting',
  rate: 'Wear rate',
};

/** What a figure is called on the screen. */
export const figureWords = (figure: TrialFigure): string => FIGURE_WORDS[figure];

/**
 * Where the dot, the post and the hatching of one break-even stand on a line from 0.
 *
 * @example turnScale({ figure: 'price', now: 20, at: 30, side: 'above', ... }).nowAt // 49.4, of 0 to 40.5
 */
export function turnScale(turn: CallTurn): TurnScale {
  const most = BEYOND * Math.max(turn.now, turn.at);
  const place = (figure: number): number => (most > 0 ? (100 * figure) / most : 0);
  const [nowAt, postAt] = [place(turn.now), place(turn.at)];
  const [lowLabel, highLabel] = apart(Math.min(nowAt, postAt), Math.max(nowAt, postAt));
  const isNowLower = nowAt <= postAt;
  const [nowShown, postShown] = shownFigures(turn);
  const unit = turn.figure === 'rate' ? showUnit(turn.unit) : turn.unit;
  return {
    nowAt,
    postAt,
    zoneFrom: turn.side === 'above' ? postAt : 0,
    zoneTo: turn.side === 'above' ? 100 : postAt,
    nowLabelAt: isNowLower ? lowLabel : highLabel,
    postLabelAt: isNowLower ? highLabel : lowLabel,
    nowShown,
    postShown,
    words: `${turn.side} ${postShown}${unit === '' ? '' : ` ${unit}`}${reasonWords(turn)}`,
  };
}

function reasonWords(turn: CallTurn): string {
  if (turn.barred) return ', where the risk limit turns it';
  return turn.because === 'limit' ? ', where a limit stops it' : '';
}

/** Enough places to tell the two figures apart: money to the cent below 100, rates to three figures. */
function shownFigures({ figure, now, at }: CallTurn): readonly [string, string] {
  if (figure === 'rate') return [precise(now), precise(at)];
  const places = Math.max(now, at) < 100 ? 2 : 0;
  return [showNumber(now, places), showNumber(at, places)];
}

const precise = (rate: number): string => showNumber(Number(rate.toPrecision(3)));

/** Two labels at least so far apart, neither past the ends. */
function apart(low: number, high: number): readonly [number, number] {
  const short = Math.max(0, APART - (high - low)) / 2;
  let [left, right] = [low - short, high + short];
  if (left < APART / 2) [left, right] = [APART / 2, Math.max(right, 1.5 * APART)];
  if (right > 100 - APART / 2) [left, right] = [Math.min(left, 100 - 1.5 * APART), 100 - APART / 2];
  return [left, right];
}
