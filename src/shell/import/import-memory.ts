import type { ConfirmedFit } from '../../import/fit-parts.ts';
import type { RememberedMatch } from '../../import/match-columns.ts';
import { ROLES } from '../../import/roles.ts';

const KEY = 'sparewell-imports';
const MOST_MATCHES = 100;
const MOST_FITS = 4000;

/** What earlier imports have left on this device. */
export interface ImportMemory {
  readonly matches: readonly RememberedMatch[];
  readonly fits: readonly ConfirmedFit[];
  /** Supplier by header key. */
  readonly suppliers: readonly (readonly [headerKey: string, supplier: string])[];
}

/** Only what has the right shape: the storage may hold anything. */
export function readMemory(): ImportMemory {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<
      Record<keyof ImportMemory, unknown>
    >;
    const list = (part: unknown): readonly unknown[] => (Array.isArray(part) ? part : []);
    return {
      matches: list(found?.matches).filter(isMatch),
      fits: list(found?.fits).filter(isFit),
      suppliers: list(found?.suppliers).filter(isPair),
    };
  } catch {
    return { matches: [], fits: [], suppliers: [] };
  }
}

/** Puts what an import has confirmed before what is known; of the same header or offer only the new stays. */
export function remember(
  match: RememberedMatch | null,
  supplier: string,
  fits: readonly ConfirmedFit[],
): void {
  const known = readMemory();
  const fitKey = (fit: ConfirmedFit): string => `${fit.supplier}\n${fit.offer}`;
  const fresh = new Set(fits.map(fitKey));
  const key = match?.headerKey;
  const memory: ImportMemory = {
    matches: [...(match ? [match] : []), ...known.matches.filter((held) => held.headerKey !== key)].slice(
      0,
      MOST_MATCHES,
    ),
    fits: [...fits, ...known.fits.filter((fit) => !fresh.has(fitKey(fit)))].slice(0, MOST_FITS),
    suppliers: [
      ...(key !== undefined && supplier !== '' ? [[key, supplier] as const] : []),
      ...known.suppliers.filter(([held]) => held !== key),
    ].slice(0, MOST_MATCHES),
  };
  try {
    localStorage.setItem(KEY, JSON.stringify(memory));
  } catch {
    // Without storage the next import asks again, and the offers in the table still tell their parts.
  }
}

function isMatch(found: unknown): found is RememberedMatch {
  const { headerKey, roles, currency } = (found ?? {}) as Partial<RememberedMatch>;
  const isMoney = currency === null || typeof currency === 'string';
  return (
    typeof headerKey === 'string' &&
    isMoney &&
    Array.isArray(roles) &&
    roles.every((role) => ROLES.includes(role))
  );
}

function isFit(found: unknown): found is ConfirmedFit {
  const { supplier, part, offer } = (found ?? {}) as Partial<ConfirmedFit>;
  return typeof supplier === 'string' && typeof part === 'string' && typeof offer === 'string';
}

function isPair(found: unknown): found is readonly [string, string] {
  return Array.isArray(found) && found.length === 2 && found.every((text) => typeof text === 'string');
}
