// Rounding a number to decimal places without the traps of binary fractions, and setting its digits.

/** up: never below the value; down: never above it; near: to the nearest, halves away from zero. */
export type Round = 'up' | 'down' | 'near';

// Twelve significant digits are kept before rounding, so that 0.1 + 0.2 rounds up to 0.3 and 1.005 to 1.01: what lies below is noise of
// the arithmetic, not weight.
const GUARD = 12;

/** The finite number as plain digits with exactly so many decimals, `-` in front unless it comes to zero. */
export function rounded(value: number, decimals: number, round: Round): string {
  const [mantissa = '0', exponent = '0'] = Math.abs(value)
    .toExponential(GUARD - 1)
    .split('e');
  const digits = BigInt(mantissa.replace('.', ''));
  const shift = Number(exponent) - (GUARD - 1) + decimals;
  const whole = shift >= 0 ? digits * 10n ** BigInt(shift) : shortened(digits, 10n ** BigInt(-shift), value < 0, round);
  const text = whole.toString().padStart(decimals + 1, '0');
  const point = text.length - decimals;
  return `${value < 0 && whole !== 0n ? '-' : ''}${text.slice(0, point)}${decimals ? `.${text.slice(point)}` : ''}`;
}

function shortened(digits: bigint, divisor: bigint, negative: boolean, round: Round): bigint {
  const rest = digits % divisor;
  const away = round === 'near' ? rest * 2n >= divisor : rest > 0n && (round === 'up') !== negative;
  return digits / divisor + (away ? 1n : 0n);
}

/** Power of ten of the first digit: 0 for 1 to 9.99, 3 for 2,142; 0 for zero. */
export const magnitude = (value: number): number =>
  value === 0
    ? 0
    : Number(
        Math.abs(value)
          .toExponential(GUARD - 1)
          .split('e')[1],
      );

/** All digits that carry meaning (15 significant), without an exponent: `0.00000012`. */
export function full(value: number): string {
  const [mantissa = '0', exponent = '0'] = value.toExponential(14).split('e');
  const digits = mantissa.replace(/[-.]/g, '');
  const point = 1 + Number(exponent);
  const text =
    point <= 0
      ? `0.${'0'.repeat(-point)}${digits}`
      : point >= digits.length
        ? digits.padEnd(point, '0')
        : `${digits.slice(0, point)}.${digits.slice(point)}`;
  const short = cut(text);
  return value < 0 && short !== '0' ? `-${short}` : short;
}

const cut = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/**
 * Without zeros at the end of the decimals. Three decimals after a whole part keep one zero more (`2.1340`): three digits behind a
 * point are read as thousands in half of the world, and the language itself doubts them.
 */
export function trimmed(text: string): string {
  const short = cut(text);
  return /[1-9]\d*\.\d{3}$/.test(short) ? `${short}0` : short;
}

/** Commas before each three digits of the whole part. */
export function grouped(text: string): string {
  const [whole = '', decimals] = text.split('.');
  const commas = whole.replace(/(\d)(?=(\d{3})+$)/g, '$1,');
  return decimals === undefined ? commas : `${commas}.${decimals}`;
}
