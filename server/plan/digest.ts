// A digest of text in plain JavaScript, so that Node, the browser and the command line make the same one: SHA-256.

/** The SHA-256 of a text's UTF-8 bytes, 64 hexadecimal digits. Source: FIPS 180-4, sections 4.1.2, 5.1.1, 5.3.3 and 6.2. */
export const digest = (text: string): string => digestOf(new TextEncoder().encode(text));

const printed = new WeakMap<Uint8Array, string>();

/** The same of the content of a file; worked out once for each content. */
export function printOf(bytes: Uint8Array): string {
  let print = printed.get(bytes);
  if (print === undefined) {
    print = digestOf(bytes);
    printed.set(bytes, print);
  }
  return print;
}

function digestOf(bytes: Uint8Array): string {
  const words = padded(bytes);
  const state = Uint32Array.from(start);
  const schedule = new Int32Array(64);
  for (let at = 0; at < words.length; at += 16) block(state, words.subarray(at, at + 16), schedule);
  return [...state].map((word) => word.toString(16).padStart(8, '0')).join('');
}

/** The bytes as big-endian words, with the closing bit and the length in bits. */
function padded(bytes: Uint8Array): Uint32Array {
  const words = new Uint32Array((((bytes.length + 8) >> 6) + 1) * 16);
  for (let i = 0; i < bytes.length; i++) set(words, i, bytes[i] ?? 0);
  set(words, bytes.length, 0x80);
  words[words.length - 2] = Math.floor(bytes.length / 0x20000000);
  words[words.length - 1] = bytes.length << 3;
  return words;
}

function set(words: Uint32Array, byte: number, value: number): void {
  words[byte >> 2] = (words[byte >> 2] ?? 0) | (value << (24 - (byte & 3) * 8));
}

/** One block of 16 words. Plain variables: this runs over every section of a sheet after every pause in typing. */
function block(state: Uint32Array, words: Uint32Array, w: Int32Array): void {
  w.set(words);
  for (let t = 16; t < 64; t++) {
    const a = w[t - 15] as number;
    const b = w[t - 2] as number;
    const s0 = turn(a, 7) ^ turn(a, 18) ^ (a >>> 3);
    const s1 = turn(b, 17) ^ turn(b, 19) ^ (b >>> 10);
    w[t] = (w[t - 16] as number) + s0 + (w[t - 7] as number) + s1;
  }
  let a = state[0] as number;
  let b = state[1] as number;
  let c = state[2] as number;
  let d = state[3] as number;
  let e = state[4] as number;
  let f = state[5] as number;
  let g = state[6] as number;
  let h = state[7] as number;
  for (let t = 0; t < 64; t++) {
    const s1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + (constants[t] as number) + (w[t] as number)) | 0;
    const s0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  state[0] = (state[0] as number) + a;
  state[1] = (state[1] as number) + b;
  state[2] = (state[2] as number) + c;
  state[3] = (state[3] as number) + d;
  state[4] = (state[4] as number) + e;
  state[5] = (state[5] as number) + f;
  state[6] = (state[6] as number) + g;
  state[7] = (state[7] as number) + h;
}

const turn = (value: number, bits: number) => (value >>> bits) | (value << (32 - bits));

/** The first 32 bits of the fractional parts of square roots (start) and cube roots (constants) of the first primes. */
const fraction = (root: number) => Math.floor((root - Math.floor(root)) * 0x100000000);
const primes: readonly number[] = Array.from({ length: 310 }, (_, n) => n + 2).filter((n) => {
  for (let d = 2; d * d <= n; d++) if (n % d === 0) return false;
  return true;
});
const start = primes.slice(0, 8).map((prime) => fraction(Math.sqrt(prime)));
const constants = Int32Array.from(primes.slice(0, 64), (prime) => fraction(Math.cbrt(prime)));
