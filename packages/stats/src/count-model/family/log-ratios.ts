import { log1p } from '../../elementary.ts'

/** log1p(x) / x, and 1 at 0; `logged` is log1p(x). */
export const logRatio = (x: number, logged: number): number => (x < 1e-8 ? 1 - x / 2 : logged / x)

/** (log1p(x) - x / (1 + x)) / x^2: 1/2 at 0. Below a hundredth its series, sum of (-x)^j (j + 1) / (j + 2). */
export function curvedRatio(x: number, logged: number): number {
  if (x >= 1e-2) return (logged - x / (1 + x)) / (x * x)
  let sum = 0
  for (let j = 9; j >= 0; j--) sum = sum * -x + (j + 1) / (j + 2)
  return sum
}

/** Both for one x. */
export const ratiosOf = (x: number): { readonly log: number; readonly curved: number } => {
  const logged = log1p(x)
  return { log: logRatio(x, logged), curved: curvedRatio(x, logged) }
}
