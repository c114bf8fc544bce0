const KEY = 'sparewell-notebook';

/**
 * Which notebook was open last. Kept apart from the notebooks themselves, so that a device that has lost
 * them can be told from one that never had any.
 */
export function rememberedNotebook(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

export function rememberNotebook(id: string): void {
  try {
    localStorage.setItem(KEY, id);
  } catch {
    // A closed storage only loses which notebook was last; the notebooks are kept elsewhere.
  }
}
