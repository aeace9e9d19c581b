// In place of a polyfill that a package asks for: every browser has its own, and the polyfill does not start in a worker.
export const { Blob } = globalThis;
