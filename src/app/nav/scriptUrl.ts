/** The part of the Trusted Types interface (W3C) that is used; the compiler's library does not have it yet. */
interface Policies {
  createPolicy(name: string, rules: { createScriptURL(url: string): string }): { createScriptURL(url: string): string };
}

const { trustedTypes } = globalThis as { trustedTypes?: Policies };

/** The one policy of Minim: scripts that the browser starts itself come from Minim's own address, or not at all. */
const policy = trustedTypes?.createPolicy('minim-worker', {
  createScriptURL(url) {
    if (new URL(url, document.baseURI).origin !== location.origin) throw new TypeError('not a script of Minim');
    return url;
  },
});

/** An address that may be handed to the browser as a worker's script where Trusted Types are enforced. */
export function scriptUrl(address: string): string {
  return policy?.createScriptURL(address) ?? address;
}
