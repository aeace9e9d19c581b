// Script addresses under `require-trusted-types-for 'script'`: only our own origin passes.
interface TrustedTypes {
  createPolicy(name: string, rules: { createScriptURL: (url: string) => string }): { createScriptURL: (url: string) => string };
}

const types = (globalThis as { trustedTypes?: TrustedTypes }).trustedTypes;
const policy = types?.createPolicy('axlehand', { createScriptURL: ownAddress });

function ownAddress(url: string): string {
  if (new URL(url, location.href).origin !== location.origin)
    throw new TypeError(`expected an address of this server, got ${url}`);
  return url;
}

/** The address of a script of ours, in the form that Worker and serviceWorker.register take. */
export function scriptAddress(url: string): string {
  return policy ? policy.createScriptURL(url) : ownAddress(url);
}
