// Read by whatever Node is there, however old: nothing newer than plain ES modules in this file.

/** The oldest Node that the build tools run on. */
export const OLDEST_NODE = [20, 19];

/**
 * Whether a Node version will do.
 * @param {string} version as in `process.versions.node`, e.g. '18.20.4'
 * @returns {string | null} one sentence that says what is wrong and what mends it, or null when it will do.
 *   nodeComplaint('18.20.4') is 'Sparewell needs Node 20.19 or newer, and this is Node 18.20.4: ...'
 */
export function nodeComplaint(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const [oldestMajor = 0, oldestMinor = 0] = OLDEST_NODE;
  if (major > oldestMajor || (major === oldestMajor && minor >= oldestMinor)) return null;
  return `Sparewell needs Node ${OLDEST_NODE.join('.')} or newer, and this is Node ${version}: install a newer Node and run the command again.`;
}

/** Ends the process with that sentence when this Node is too old. */
export function requireNode() {
  const complaint = nodeComplaint(process.versions.node);
  if (complaint === null) return;
  console.error(complaint);
  process.exit(1);
}
