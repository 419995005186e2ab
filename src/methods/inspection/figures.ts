/** Values against their limits need no plot: the page shows them as a table. */
import type { Method } from '../method.ts'

export const figures: Method['figures'] = () => []
