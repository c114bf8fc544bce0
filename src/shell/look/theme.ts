/** Day: paper, outdoors. Shed: lamp-lit, dim. */
export type Theme = 'day' | 'shed';

const KEY = 'sparewell-light';

/** What the user has chosen on this device; null: as the system says. Storage may be closed to the page. */
function chosen(): Theme | null {
  try {
    const kept = localStorage.getItem(KEY);
    return kept === 'day' || kept === 'shed' ? kept : null;
  } catch {
    return null;
  }
}

const systemDark = matchMedia('(prefers-color-scheme: dark)');

function show(theme: Theme): void {
  document.documentElement.dataset.theme = theme;
  document
    .querySelector('meta[name="theme-color"]')
    ?.setAttribute(
      'content',
      getComputedStyle(document.documentElement).getPropertyValue('--asphalt').trim(),
    );
}

/** The theme the page stands in now. */
export function currentTheme(): Theme {
  return chosen() ?? (systemDark.matches ? 'shed' : 'day');
}

/** Follow the system until the user chooses. Called once, before anything is drawn. */
export function startTheme(): void {
  show(currentTheme());
  systemDark.addEventListener('change', () => show(currentTheme()));
}

/** The user's own choice, remembered on this device. */
export function chooseTheme(theme: Theme): void {
  try {
    localStorage.setItem(KEY, theme);
  } catch {
    // A closed storage loses the choice at the next visit; the page itself changes all the same.
  }
  show(theme);
}
