import type { ColumnProfile } from './column-profile.ts';
import type { FileHead } from './file-heads.ts';
import { scoreHead } from './head-words.ts';
import { ROLE_WORDS, type Role } from './roles.ts';

/** How far a column speaks for a role. */
export interface ColumnScore {
  readonly role: Role;
  /** About 0 to 1.5; below PROPOSED_FROM nothing is proposed. */
  readonly score: number;
  /** A sentence: what speaks for it. */
  readonly reason: string;
}

/** Least score at which a role is proposed for a column. */
export const PROPOSED_FROM = 0.4;

/** Content of a column in a few words, and how far it speaks for (or, below 0, against) a role. */
interface Content {
  readonly score: number;
  readonly words: string;
}

/**
 * Scores a column for a role by the words of its head and by what its rows hold.
 *
 * @example scoreColumn(head, profile, 'price')
 * // { role: 'price', score: 1.4, reason: "Its head says 'preis', and 100% of its fields are amounts of money." }
 */
export function scoreColumn(head: FileHead, profile: ColumnProfile, role: Role): ColumnScore {
  if (profile.filled === 0) return { role, score: 0, reason: 'It is empty.' };
  const byHead = headScore(head, profile, role);
  const content = scoreContent(profile, role, head);
  const says = byHead.score > 0 ? `Its head says '${head.title.slice(0, 40)}'` : '';
  const holds = content.words;
  const reason = [says, holds].filter((part) => part !== '').join(says === '' ? '' : ', and ');
  return {
    role,
    score: byHead.score === 0 && content.score < PROPOSED_FROM ? 0 : byHead.score + content.score,
    reason: reason === '' ? '' : `${reason[0]!.toUpperCase()}${reason.slice(1)}.`,
  };
}

function headScore(head: FileHead, profile: ColumnProfile, role: Role): { score: number; words: string } {
  const found = scoreHead(head.words, role);
  if (role !== 'price' || found.score !== 0 || head.currency === null) return found;
  // A head that is only a currency stands over prices: 'EUR'.
  const isFigures = profile.shares.figure + profile.shares.money > 0.5;
  return isFigures && head.title.length <= 12 ? { score: 0.6, words: head.title } : found;
}

const percent = (share: number): string => `${Math.round(share * 100)}% of its fields`;

/** What the rows say, role by role: scores found by trying them on many real lists. */
function scoreContent(profile: ColumnProfile, role: Role, head: FileHead): Content {
  const { shares, distinct } = profile;
  const figures = shares.figure + shares.money;
  switch (role) {
    case 'price':
      return priceContent(profile);
    case 'part_number':
      return partNumberContent(profile);
    case 'description':
      return descriptionContent(profile);
    case 'currency':
      return profile.codes > 0.8
        ? { score: 0.8, words: `${percent(profile.codes)} are currency codes` }
        : { score: profile.codes + signShare(profile) > 0.5 ? 0.3 : -1, words: '' };
    case 'unit':
      return profile.units > 0.6
        ? { score: 0.7 * profile.units, words: `${percent(profile.units)} are units` }
        : {
            score: shares.words + shares.code > 0.8 && distinct < 0.3 && profile.meanLength < 8 ? 0 : -0.8,
            words: '',
          };
    case 'discount':
    case 'tax':
      return {
        score: shares.percent > 0.5 && role === 'discount' ? 0.4 : figures + shares.percent > 0.5 ? 0 : -0.6,
        words: shares.percent > 0.5 ? `${percent(shares.percent)} are percentages` : '',
      };
    case 'pack_quantity':
    case 'price_for':
    case 'from_quantity':
      return {
        score: shares.figure + shares.measure + shares.code > 0.5 && profile.decimals < 0.9 ? 0.1 : -0.6,
        words: '',
      };
    case 'lead_time':
      return { score: shares.date > 0.5 || shares.money > 0.3 ? -0.6 : 0.05, words: '' };
    case 'stock':
      return {
        score:
          shares.money > 0.3 || shares.date > 0.5 || (shares.words > 0.9 && distinct <= 0.05) ? -0.6 : 0.05,
        words: '',
      };
    case 'supplier':
    case 'fits':
      return { score: figures > 0.6 && head.words !== 'fits' ? -0.6 : 0, words: '' };
    case 'ignore':
      return { score: 0, words: '' };
  }
}

function signShare(profile: ColumnProfile): number {
  const counted = profile.money.reduce((sum, { count }) => sum + count, 0);
  return profile.filled === 0 ? 0 : counted / profile.filled;
}

function priceContent(profile: ColumnProfile): Content {
  const { shares } = profile;
  const figures = shares.figure + shares.money + profile.priceWords;
  if (shares.percent > 0.3 || shares.date > 0.3 || profile.counting > 0.8) return { score: -1, words: '' };
  if (shares.money > 0.4) {
    return { score: 0.35 + 0.3 * shares.money, words: `${percent(shares.money)} are amounts of money` };
  }
  // Ranges ($25-$41) are words or codes by their shape; the sign tells them.
  if (signShare(profile) > 0.5) return { score: 0.4, words: 'most of its fields name a currency' };
  if (figures < 0.3 && shares.measure < 0.3) return { score: -1, words: '' };
  if (profile.decimals > 0.3) {
    return {
      score: 0.2 + 0.3 * profile.decimals,
      words: `${percent(profile.decimals)} are figures with decimals`,
    };
  }
  return { score: 0.1 * figures, words: '' };
}

function partNumberContent(profile: ColumnProfile): Content {
  const { shares, distinct } = profile;
  let score = 0.3 * shares.code + 0.3 * Math.max(0, distinct - 0.5) * 2;
  if (profile.filled > 30 && distinct < 0.3) score -= 0.9;
  else if (profile.filled > 10 && distinct < 0.3) score -= 0.6;
  else if (profile.filled > 10 && distinct < 0.5) score -= 0.15;
  if (profile.counting > 0.8) score -= 0.4;
  if (profile.meanLength > 30 || shares.words > 0.7) score -= 0.35;
  if (shares.money > 0.3 || profile.decimals > 0.5 || shares.percent > 0.3 || shares.date > 0.5) score -= 1;
  if (shares.figure > 0.8 && profile.meanLength < 4) score -= 0.15;
  if (profile.fill < 0.1) score -= 0.5;
  if (profile.machine > 0.3) score -= 0.8;
  const words =
    distinct <= 0.9
      ? ''
      : shares.code > 0.6
        ? 'its fields are codes, each another'
        : 'each of its fields is another';
  return { score, words };
}

function descriptionContent(profile: ColumnProfile): Content {
  const { shares, distinct } = profile;
  let score = 0.35 * shares.words * Math.min(1, distinct * 1.5) + Math.min(0.2, profile.meanLength / 100);
  score -= 0.4 * shares.code;
  if (shares.figure + shares.money + shares.percent + shares.date > 0.5) score -= 0.9;
  if (profile.machine > 0.3) score -= 0.8;
  if (profile.units > 0.5 || profile.codes > 0.5) score -= 0.8;
  if (profile.filled > 10 && distinct < 0.05) score -= 0.5;
  if (profile.fill < 0.5) score -= 0.25;
  const words = shares.words > 0.6 && distinct > 0.6 ? 'its fields are words, most of them different' : '';
  return { score, words };
}

/** The sentence for a role that a reader or an earlier file has set. */
export function setWords(role: Role, by: 'hand' | 'memory'): string {
  return by === 'hand'
    ? `Set by hand: ${ROLE_WORDS[role]}.`
    : `Set as for the last file with this header: ${ROLE_WORDS[role]}.`;
}
