// Small dense linear algebra on typed arrays, row after row: Cholesky, symmetric eigenvalues, right singular vectors.

/**
 * Lower Cholesky factor of A + shift I into `lower`; false when the sum is not positive definite.
 * A is n × n and symmetric; only its lower triangle is read.
 */
export function cholesky(a: Float64Array, n: number, shift: number, lower: Float64Array): boolean {
  for (let i = 0; i < n; i++) {
    const row = i * n;
    for (let j = 0; j <= i; j++) {
      const other = j * n;
      let sum = a[row + j]!;
      for (let k = 0; k < j; k++) sum -= lower[row + k]! * lower[other + k]!;
      if (i === j) {
        sum += shift;
        if (!(sum > 0)) return false;
        lower[row + i] = Math.sqrt(sum);
      } else {
        lower[row + j] = sum / lower[other + j]!;
      }
    }
  }
  return true;
}

/** Solves L Lᵀ x = b in place, L from `cholesky`. */
export function choleskySolve(lower: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i]!;
    for (let k = 0; k < i; k++) sum -= lower[i * n + k]! * b[k]!;
    b[i] = sum / lower[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i]!;
    for (let k = i + 1; k < n; k++) sum -= lower[k * n + i]! * b[k]!;
    b[i] = sum / lower[i * n + i]!;
  }
}

/** Eigenvalues, rising; the eigenvector of values[k] is the row k of `vectors`. */
export interface Eigen {
  readonly values: Float64Array;
  readonly vectors: Float64Array;
}

/**
 * All eigenvalues and eigenvectors of a symmetric n × n matrix.
 * Householder reduction to three diagonals, then implicit QL: Bowdler, Martin, Reinsch and Wilkinson, Handbook for
 * Automatic Computation II (1971), contributions II/2 and II/3.
 */
export function eigenSymmetric(a: Float64Array, n: number): Eigen {
  const vectors = a.slice(0, n * n);
  const values = new Float64Array(n);
  const off = new Float64Array(n);
  if (n > 0) {
    tridiagonalise(vectors, values, off, n);
    diagonalise(vectors, values, off, n);
    sortRising(vectors, values, n);
  }
  return { values, vectors };
}

// In both halves below v holds the transformation with its columns as rows, so that inner loops run along memory.
function tridiagonalise(v: Float64Array, d: Float64Array, e: Float64Array, n: number): void {
  for (let j = 0; j < n; j++) d[j] = v[j * n + n - 1]!;
  for (let i = n - 1; i > 0; i--) {
    let scale = 0;
    let h = 0;
    for (let k = 0; k < i; k++) scale += Math.abs(d[k]!);
    if (scale === 0) {
      e[i] = d[i - 1]!;
      for (let j = 0; j < i; j++) {
        d[j] = v[j * n + i - 1]!;
        v[j * n + i] = 0;
        v[i * n + j] = 0;
      }
    } else {
      for (let k = 0; k < i; k++) {
        d[k] = d[k]! / scale;
        h += d[k]! * d[k]!;
      }
      h = reflect(v, d, e, n, i, h, scale);
    }
    d[i] = h;
  }
  accumulate(v, d, n);
  e[0] = 0;
}

function reflect(
  v: Float64Array,
  d: Float64Array,
  e: Float64Array,
  n: number,
  i: number,
  norm2: number,
  scale: number,
): number {
  const last = d[i - 1]!;
  const pivot = last > 0 ? -Math.sqrt(norm2) : Math.sqrt(norm2);
  e[i] = scale * pivot;
  const h = norm2 - last * pivot;
  d[i - 1] = last - pivot;
  for (let j = 0; j < i; j++) e[j] = 0;
  for (let j = 0; j < i; j++) {
    const f = d[j]!;
    const row = j * n;
    v[i * n + j] = f;
    let g = e[j]! + v[row + j]! * f;
    for (let k = j + 1; k < i; k++) {
      g += v[row + k]! * d[k]!;
      e[k] = e[k]! + v[row + k]! * f;
    }
    e[j] = g;
  }
  let f = 0;
  for (let j = 0; j < i; j++) {
    e[j] = e[j]! / h;
    f += e[j]! * d[j]!;
  }
  const half = f / (h + h);
  for (let j = 0; j < i; j++) e[j] = e[j]! - half * d[j]!;
  for (let j = 0; j < i; j++) {
    const dj = d[j]!;
    const ej = e[j]!;
    const row = j * n;
    for (let k = j; k < i; k++) v[row + k] = v[row + k]! - (dj * e[k]! + ej * d[k]!);
    d[j] = v[row + i - 1]!;
    v[row + i] = 0;
  }
  return h;
}

function accumulate(v: Float64Array, d: Float64Array, n: number): void {
  for (let i = 0; i < n - 1; i++) {
    v[i * n + n - 1] = v[i * n + i]!;
    v[i * n + i] = 1;
    const h = d[i + 1]!;
    const next = (i + 1) * n;
    if (h !== 0) {
      for (let k = 0; k <= i; k++) d[k] = v[next + k]! / h;
      for (let j = 0; j <= i; j++) {
        const row = j * n;
        let g = 0;
        for (let k = 0; k <= i; k++) g += v[next + k]! * v[row + k]!;
        for (let k = 0; k <= i; k++) v[row + k] = v[row + k]! - g * d[k]!;
      }
    }
    for (let k = 0; k <= i; k++) v[next + k] = 0;
  }
  for (let j = 0; j < n; j++) {
    d[j] = v[j * n + n - 1]!;
    v[j * n + n - 1] = 0;
  }
  v[n * n - 1] = 1;
}

function diagonalise(v: Float64Array, d: Float64Array, e: Float64Array, n: number): void {
  for (let i = 1; i < n; i++) e[i - 1] = e[i]!;
  e[n - 1] = 0;
  let shift = 0;
  let largest = 0;
  for (let l = 0; l < n; l++) {
    largest = Math.max(largest, Math.abs(d[l]!) + Math.abs(e[l]!));
    const small = Number.EPSILON * largest;
    let m = l;
    while (m < n - 1 && Math.abs(e[m]!) > small) m++;
    // 30 rounds are far more than QL ever takes; the bound is there so that nothing can hang.
    for (let round = 0; m > l && round < 30; round++) {
      shift += qlStep(v, d, e, n, l, m);
      if (Math.abs(e[l]!) <= small) break;
    }
    d[l] = d[l]! + shift;
    e[l] = 0;
  }
}

function qlStep(v: Float64Array, d: Float64Array, e: Float64Array, n: number, l: number, m: number): number {
  const first = d[l]!;
  let p = (d[l + 1]! - first) / (2 * e[l]!);
  let r = Math.sqrt(p * p + 1);
  if (p < 0) r = -r;
  const below = e[l]! * (p + r);
  d[l] = e[l]! / (p + r);
  d[l + 1] = below;
  const shift = first - d[l]!;
  for (let i = l + 2; i < n; i++) d[i] = d[i]! - shift;
  p = d[m]!;
  const el1 = e[l + 1]!;
  let c = 1;
  let c2 = 1;
  let c3 = 1;
  let s = 0;
  let s2 = 0;
  for (let i = m - 1; i >= l; i--) {
    c3 = c2;
    c2 = c;
    s2 = s;
    const g = c * e[i]!;
    const h = c * p;
    r = Math.sqrt(p * p + e[i]! * e[i]!);
    e[i + 1] = s * r;
    s = r === 0 ? 0 : e[i]! / r;
    c = r === 0 ? 1 : p / r;
    p = c * d[i]! - s * g;
    d[i + 1] = h + s * (c * g + s * d[i]!);
    const lower = i * n;
    const upper = lower + n;
    for (let k = 0; k < n; k++) {
      const above = v[upper + k]!;
      const here = v[lower + k]!;
      v[upper + k] = s * here + c * above;
      v[lower + k] = c * here - s * above;
    }
  }
  p = (-s * s2 * c3 * el1 * e[l]!) / below;
  e[l] = s * p;
  d[l] = c * p;
  return shift;
}

function sortRising(v: Float64Array, d: Float64Array, n: number): void {
  for (let i = 0; i < n - 1; i++) {
    let least = i;
    for (let j = i + 1; j < n; j++) if (d[j]! < d[least]!) least = j;
    if (least === i) continue;
    const value = d[i]!;
    d[i] = d[least]!;
    d[least] = value;
    for (let k = 0; k < n; k++) {
      const held = v[i * n + k]!;
      v[i * n + k] = v[least * n + k]!;
      v[least * n + k] = held;
    }
  }
}

/**
 * Right singular vectors of an m × n matrix whose singular value is at most `relative` times the largest: an
 * orthonormal base of what the matrix takes to (nearly) nothing, row after row. From the eigenvectors of AᵀA, so
 * `relative` must stay well over 1e-8.
 */
export function nearNullSpace(a: Float64Array, m: number, n: number, relative: number): Float64Array[] {
  const square = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = 0; k < m; k++) sum += a[k * n + i]! * a[k * n + j]!;
      square[i * n + j] = sum;
      square[j * n + i] = sum;
    }
  }
  const { values, vectors } = eigenSymmetric(square, n);
  const limit = relative * relative * (values[n - 1] ?? 0);
  const base: Float64Array[] = [];
  for (let k = 0; k < n && values[k]! <= limit; k++) base.push(vectors.slice(k * n, (k + 1) * n));
  return base;
}
