type OwnAddress = { readonly createScriptURL: (address: string) => string };

let policy: OwnAddress | undefined;

/**
 * The address of one of the app's own scripts, in the form that the page's Content-Security-Policy asks of
 * workers. The policy of that name may be made only once, so all that start a worker take theirs from here.
 *
 * Throws RangeError for the address of another host.
 *
 * @example ownScript(new URL('./service-worker.js', document.baseURI))
 */
export function ownScript(address: URL): string {
  policy ??= makePolicy();
  return policy.createScriptURL(address.href);
}

function makePolicy(): OwnAddress {
  const rules: OwnAddress = {
    createScriptURL: (address) => {
      if (new URL(address).origin !== location.origin)
        throw new RangeError(`A script from another host is not run: ${address}`);
      return address;
    },
  };
  const { trustedTypes } = globalThis as {
    trustedTypes?: { createPolicy(name: string, rules: OwnAddress): OwnAddress };
  };
  // Browsers without trusted types take the plain text.
  return trustedTypes?.createPolicy('sparewell', rules) ?? rules;
}
