/** Made when it is first asked for, and kept: what most callers never look at costs them nothing. */
export const lazily = <T>(make: () => T): (() => T) => {
  let made: { readonly value: T } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}
