/** Where a line may end within a formula: behind the `_` of a name, an operator or a comma. */

/** Not behind `+` and `-`, which may belong to a number (`1e-3`); a browser ends lines at most of these by itself. */
const BEHIND = /(?<=[_*/^,(]|[<>=](?!=))(?=[^\s])/

/** The pieces of a formula or a name, in order; together they are the text to the letter. */
export const breakable = (text: string): readonly string[] => text.split(BEHIND)
