// The one door through which kernels take elementary functions. ECMAScript leaves the last bits of `exp`, `log`, `pow` and `sin` to
// the engine; exp, log and log1p here are our own, of sums, products and tables, and give the same bits everywhere. The others are
// the engine's: where they enter a result, its last digit may differ between engines.
export { exp } from './elementary/exp.ts'
export { log, log1p } from './elementary/log.ts'
export const { cos, expm1, pow, sin, tan } = Math
