const FOCUSABLE =
  'a[href], button:not([disabled]), input:not([disabled]), select:not([disabled]), textarea:not([disabled]), [tabindex="0"]';

/** The first thing inside `root` that can take the keyboard, looking into open shadow roots; null if none. */
export function firstFocusable(root: ParentNode): HTMLElement | null {
  for (const element of root.querySelectorAll<HTMLElement>('*')) {
    if (element.matches(FOCUSABLE) && element.offsetParent !== null) return element;
    const inner = element.shadowRoot && firstFocusable(element.shadowRoot);
    if (inner) return inner;
  }
  return null;
}

/** Is someone writing here, so that single letters and Escape belong to the field? Looks into shadow roots. */
export function isWriting(event: Event): boolean {
  const target = event.composedPath()[0];
  if (!(target instanceof HTMLElement)) return false;
  if (target.isContentEditable) return true;
  if (target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement) return true;
  return (
    target instanceof HTMLInputElement && !['checkbox', 'radio', 'range', 'button'].includes(target.type)
  );
}
