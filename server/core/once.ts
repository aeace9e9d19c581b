// Work that is asked for dozens of times a turn about the same things, done once.

/** `make`, done once for each object while that object lives. It must depend on nothing else. */
export function oncePer<K extends object, V>(make: (of: K) => V): (of: K) => V {
  const made = new WeakMap<K, { readonly value: V }>();
  return (of) => {
    const before = made.get(of);
    if (before) return before.value;
    const value = make(of);
    made.set(of, { value });
    return value;
  };
}
