/** One file of a version of the app, as the build lists it. */
export interface VersionFile {
  /** Address from the page, such as `assets/index-3fKq2_aZ.js`. */
  readonly url: string;
  /** Hash of the content; null where the name itself holds one. */
  readonly revision: string | null;
  /** The browser refuses a file that is not this one: the server may already hold the next version. */
  readonly integrity: string;
}

export const PAGE = 'index.html';
const CACHE_START = 'sparewell-version-';

export const cacheOf = (version: string): string => `${CACHE_START}${version}`;

/** Caches of other versions than this one. */
export function olderCaches(names: readonly string[], version: string): readonly string[] {
  return names.filter((name) => name.startsWith(CACHE_START) && name !== cacheOf(version));
}

/**
 * The file that an address inside the app means, without query; null for one outside. The page itself has
 * two addresses.
 *
 * @param scope whole address of the folder the app stands in
 * @example fileAt('https://a.test/app/?x=1', 'https://a.test/app/') // 'index.html'
 */
export function fileAt(address: string, scope: string): string | null {
  const { origin, pathname } = new URL(address);
  const bare = origin + pathname;
  if (!bare.startsWith(scope)) return null;
  return bare.slice(scope.length) || PAGE;
}

/** The build puts a hash of the content into such names, so what one version means by it, any other does. */
export const namesItsContent = (file: string): boolean => /^assets\/[^/]+-[\w-]{8}\.\w+$/.test(file);
