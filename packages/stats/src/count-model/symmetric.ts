/** Lower Cholesky factor of a symmetric p by p matrix (row major), in place. @returns false where it is not positive definite */
export function cholesky(matrix: Float64Array, p: number): boolean {
  for (let j = 0; j < p; j++) {
    let pivot = matrix[j * p + j] as number
    for (let k = 0; k < j; k++) pivot -= (matrix[j * p + k] as number) ** 2
    if (!(pivot > 0)) return false
    const root = Math.sqrt(pivot)
    matrix[j * p + j] = root
    for (let i = j + 1; i < p; i++) {
      let sum = matrix[i * p + j] as number
      for (let k = 0; k < j; k++) sum -= (matrix[i * p + k] as number) * (matrix[j * p + k] as number)
      matrix[i * p + j] = sum / root
    }
  }
  return true
}

/** Solves with a lower Cholesky factor, in place of b. */
export function solveCholesky(factor: Float64Array, p: number, b: Float64Array): void {
  for (let i = 0; i < p; i++) {
    let sum = b[i] as number
    for (let k = 0; k < i; k++) sum -= (factor[i * p + k] as number) * (b[k] as number)
    b[i] = sum / (factor[i * p + i] as number)
  }
  for (let i = p - 1; i >= 0; i--) {
    let sum = b[i] as number
    for (let k = i + 1; k < p; k++) sum -= (factor[k * p + i] as number) * (b[k] as number)
    b[i] = sum / (factor[i * p + i] as number)
  }
}

/** Inverse of a symmetric positive definite matrix; null where it is not. The matrix stays as it is. */
export function inverseOf(matrix: Float64Array, p: number): Float64Array | null {
  const factor = matrix.slice()
  if (!cholesky(factor, p)) return null
  const inverse = new Float64Array(p * p)
  const unit = new Float64Array(p)
  for (let j = 0; j < p; j++) {
    unit.fill(0)
    unit[j] = 1
    solveCholesky(factor, p, unit)
    for (let i = 0; i < p; i++) inverse[i * p + j] = unit[i] as number
  }
  return inverse
}

/** a'Mb of a p by p matrix. */
export function quadratic(a: Float64Array, matrix: Float64Array, b: Float64Array, p: number): number {
  let sum = 0
  for (let i = 0; i < p; i++) {
    let row = 0
    for (let j = 0; j < p; j++) row += (matrix[i * p + j] as number) * (b[j] as number)
    sum += (a[i] as number) * row
  }
  return sum
}

/** The mean of a matrix and its transpose, in its place: differences of a gradient are not quite symmetric. */
export function symmetrise(matrix: Float64Array, p: number): void {
  for (let i = 0; i < p; i++)
    for (let j = 0; j < i; j++) {
      const both = ((matrix[i * p + j] as number) + (matrix[j * p + i] as number)) / 2
      matrix[i * p + j] = both
      matrix[j * p + i] = both
    }
}

/** Rounds of Jacobi's rotations: each about squares what is left off the diagonal. */
const mostSweeps = 30

/**
 * The least eigenvalue, and its eigenvector, of a symmetric p by p matrix scaled to a unit diagonal (to signs where an entry there is
 * not positive). Of p = 0: Infinity, and nothing.
 */
export function flattestDirection(
  matrix: Float64Array,
  p: number,
): { readonly eigenvalue: number; readonly direction: Float64Array } {
  const a = new Float64Array(p * p)
  const size = Float64Array.from({ length: p }, (_, i) => Math.sqrt(Math.abs(matrix[i * (p + 1)] as number)) || 1)
  for (let i = 0; i < p; i++)
    for (let j = 0; j < p; j++) a[i * p + j] = (matrix[i * p + j] as number) / ((size[i] as number) * (size[j] as number))
  const vectors = new Float64Array(p * p)
  for (let i = 0; i < p; i++) vectors[i * (p + 1)] = 1
  for (let sweep = 0; sweep < mostSweeps; sweep++) {
    let off = 0
    for (let i = 0; i < p; i++)
      for (let j = 0; j < i; j++) {
        const apart = a[i * p + j] as number
        off += apart * apart
        if (apart !== 0) rotate(a, vectors, p, j, i)
      }
    if (!(off > 1e-30)) break
  }
  let least = 0
  for (let i = 1; i < p; i++) if ((a[i * (p + 1)] as number) < (a[least * (p + 1)] as number)) least = i
  return {
    eigenvalue: p === 0 ? Number.POSITIVE_INFINITY : (a[least * (p + 1)] as number),
    direction: Float64Array.from({ length: p }, (_, i) => vectors[i * p + least] as number),
  }
}

/** One rotation of Jacobi's that makes entry (k, l) zero. */
function rotate(a: Float64Array, vectors: Float64Array, p: number, k: number, l: number): void {
  const apart = a[k * p + l] as number
  const half = ((a[l * (p + 1)] as number) - (a[k * (p + 1)] as number)) / (2 * apart)
  const tangent = (half >= 0 ? 1 : -1) / (Math.abs(half) + Math.sqrt(1 + half * half))
  const c = 1 / Math.sqrt(1 + tangent * tangent)
  const s = tangent * c
  for (let i = 0; i < p; i++) {
    const one = a[i * p + k] as number
    const other = a[i * p + l] as number
    a[i * p + k] = c * one - s * other
    a[i * p + l] = s * one + c * other
  }
  for (let i = 0; i < p; i++) {
    const one = a[k * p + i] as number
    const other = a[l * p + i] as number
    a[k * p + i] = c * one - s * other
    a[l * p + i] = s * one + c * other
    const left = vectors[i * p + k] as number
    const right = vectors[i * p + l] as number
    vectors[i * p + k] = c * left - s * right
    vectors[i * p + l] = s * left + c * right
  }
}
