import { moneyWords } from './limit-words.ts';
import type { PartWhy, RunnerUp, Turn } from './why-result.ts';

/** Whose word stands above any reckoning of ours. */
const CAUTION = 'It is a critical part: the maker’s manual, local rules and a licensed mechanic decide.';

/** Below this the difference shows as 0.00. */
const HALF_CENT = 0.005;

type Known = Pick<PartWhy, 'call' | 'by_hand' | 'critical' | 'scope' | 'proven'>;

/**
 * Why a part has its call, in one or two plain sentences:
 * "Carry 1 wins by 4.20 EUR over replace; it turns at a price above 33.30 EUR (now 31.00 EUR)."
 * @param reason `only`: no other call is open. `limits`: the limits leave no other, or are not met at all
 */
export function whySentence(
  known: Known,
  runnerUp: RunnerUp | null,
  turns: readonly Turn[],
  money: string,
  reason: 'costs' | 'only' | 'limits',
): string {
  const sentences = [runnerUp ? comparison(known, runnerUp, turns, money) : alone(known, reason)];
  if (known.critical) sentences.push(CAUTION);
  return sentences.join(' ');
}

function alone({ call, by_hand, scope }: Known, reason: 'costs' | 'only' | 'limits'): string {
  const name = capital(call);
  if (reason === 'only') return `${name} is the only call open to it.`;
  const held = scope === 'this part' ? ' while the other parts keep theirs' : '';
  return `${by_hand ? `${name} is set by hand` : name}: no other call of this part meets every limit${held}.`;
}

function comparison(
  { call, by_hand, scope, proven }: Known,
  runnerUp: RunnerUp,
  turns: readonly Turn[],
  money: string,
): string {
  const by = `${proven ? '' : 'about '}${moneyWords(Math.abs(runnerUp.costs_more), money)}`;
  const held = scope === 'this part' ? ', the other calls as they are' : '';
  const end = `${turnWords(turns, money)}.`;
  if (Math.abs(runnerUp.costs_more) < HALF_CENT)
    return `${capital(call)} and ${runnerUp.call} cost the same${held}${end}`;
  if (runnerUp.costs_more > 0) {
    const wins = by_hand ? `${capital(call)}, set by hand, wins` : `${capital(call)} wins`;
    return `${wins} by ${by} over ${runnerUp.call}${held}${end}`;
  }
  return `${capital(call)} is set by hand and costs ${by} more than ${runnerUp.call}${held}${end}`;
}

function turnWords(turns: readonly Turn[], money: string): string {
  if (turns.length === 0) return '';
  const words = turns.map(({ figure, at, side, now, because }) => {
    const shown = (value: number): string =>
      figure === 'rate' ? String(Number(value.toPrecision(3))) : moneyWords(value, money);
    const limit = because === 'limit' ? ', where a limit stops it' : '';
    return `at a ${FIGURES[figure]} ${side} ${shown(at)} (now ${shown(now)}${limit})`;
  });
  return `; it turns ${words.join(', ')}`;
}

const FIGURES = { price: 'price', stranding: 'cost of a stranding', rate: 'wear rate' } as const;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
