/** Formulas of cards: text → nodes → dimension, value, quantity, text. */
export { BUILTINS, CONSTANTS } from './builtins.ts'
export { dimensionOf } from './dimension-of.ts'
export { evaluate } from './evaluate.ts'
export { evaluateDraws } from './evaluate-draws.ts'
export { evaluateQuantity } from './evaluate-quantity.ts'
export { formatNode, substitute } from './format.ts'
export { callsIn, conjuncts, namesIn, rewrite } from './names.ts'
export { parseFormula, prepareFormulas } from './parse.ts'
