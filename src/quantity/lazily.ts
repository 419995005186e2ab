/** The answer for an object: made when it is first asked for, and kept as long as the object is. */
export const keptWith = <Key extends object, T>(make: (key: Key) => T): ((key: Key) => T) => {
  const known = new WeakMap<Key, { readonly value: T }>()
  return (key) => {
    const before = known.get(key)
    if (before) return before.value
    const value = make(key)
    known.set(key, { value })
    return value
  }
}

/** Made when it is first asked for, and kept: what most callers never look at costs them nothing. */
export const lazily = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}
