const KEY = 'sparewell-walk';

/** Whether this viewer has taken the walk, or said not now. */
export function walkSeen(): boolean {
  try {
    return localStorage.getItem(KEY) !== null;
  } catch {
    // Without storage it cannot be remembered that it was declined: better not to offer it at every visit.
    return true;
  }
}

export function rememberWalk(): void {
  try {
    localStorage.setItem(KEY, 'seen');
  } catch {
    // It is offered no more on this page all the same.
  }
}
