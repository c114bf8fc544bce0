const KEY = 'sparewell-letters';

/** Has the user switched single-letter keys off on this device? */
export function lettersOff(): boolean {
  try {
    return localStorage.getItem(KEY) === 'off';
  } catch {
    return false;
  }
}

export function setLettersOff(off: boolean): void {
  try {
    localStorage.setItem(KEY, off ? 'off' : 'on');
  } catch {
    // A closed storage keeps letters as they are.
  }
}
