/** Names under which browsers say that there is no room. */
const FULL = new Set(['QuotaExceededError', 'NS_ERROR_DOM_QUOTA_REACHED', 'NS_ERROR_FILE_NO_DEVICE_SPACE']);

/**
 * A failed save in one sentence with its mend. What browsers throw may have any shape, null included.
 */
export function saveFailureWords(error: unknown): string {
  const { name, message } = (error ?? {}) as { name?: unknown; message?: unknown };
  if (typeof name === 'string' && FULL.has(name)) {
    return 'Not kept: this device has no room left for the notebook. Save it as a file, then free some room.';
  }
  if (name === 'StorageRefusal' && typeof message === 'string') {
    return `Not kept: what is stored under this notebook cannot be read (${message}) Save it as a file.`;
  }
  if (name === 'VersionError') {
    return 'Not kept: another tab runs a newer Sparewell. Save the notebook as a file, then load this page again.';
  }
  const said = typeof message === 'string' && message !== '' ? ` (${message})` : '';
  return `Not kept: the browser could not write it${said}. It will be tried again; save it as a file to be sure.`;
}
