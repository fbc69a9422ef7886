// Which spellings are one name: of materials, and of designations such as W12X50, HEB 300, L4x4x3/8.

/** A plain name: capitals, spaces and hyphens do not count. */
export function nameKey(name: string): string {
  return name.toLowerCase().replace(/[\s-]+/g, '');
}

const fractionSigns: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const otherNames: Readonly<Record<string, string>> = {
  UNP: 'UPN',
  RSA: 'L',
  INP: 'IPN',
  UKB: 'UB',
  UKC: 'UC',
  UKPFC: 'PFC',
  UKA: 'L',
};

/**
 * A designation: capitals, spaces and hyphens do not count, `×` is X, `2-1/2`, `2 1/2` and `2.50` are one number.
 * `457x191x67 UB` is UB 457x191x67; `HE 300 B` is HEB 300, `IPE 300 A` is IPE A 300; `UKB` is UB, `RSA` is L, `INP` is IPN.
 */
export function designationKey(designation: string): string {
  const plain = designation
    .toUpperCase()
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${fractionSigns[sign]}`)
    .replace(/[×*]/g, 'X')
    .replace(/[Ø⌀]/g, 'D')
    .replace(/(\d+)[\s-]+(\d+)\/(\d+)/g, (_, whole, over, under) => String(Number(whole) + over / under))
    .replace(/(\d+)\/(\d+)/g, (_, over, under) => String(over / under))
    .replace(/\d*\.?\d+/g, (number) => String(Number(number)))
    .replace(/[\s_-]+/g, '');
  return plain
    .replace(/^([\d.X]+)([A-Z]+)$/, '$2$1')
    .replace(/^(HE|IPE)(\d+)([A-Z]+)$/, '$1$3$2')
    .replace(/^(?:UNP|RSA|INP|UKB|UKC|UKPFC|UKA)(?=\d)/, (name) => otherNames[name] ?? name);
}

/** The letters a key starts with and the numbers in it: W12X50 is W, 12 and 50. */
export function keyParts(key: string): { readonly letters: string; readonly numbers: readonly number[] } {
  const letters = /^[^\d.]*/.exec(key)?.[0] ?? '';
  return { letters, numbers: (key.slice(letters.length).match(/\d+(?:\.\d+)?/g) ?? []).map(Number) };
}

/**
 * How far apart two sizes of one kind are: 0 if equal, else by the ratios of their numbers, the last (weight or
 * thickness) counting least; null where kind or number of numbers differ.
 */
export function sizeDistance(a: string, b: string): number | null {
  const first = keyParts(a);
  const second = keyParts(b);
  if (kind(a) !== kind(b)) return null;
  return first.numbers.reduce((sum, number, index) => {
    const ratio = Math.abs(Math.log(number / (second.numbers[index] as number)));
    return sum + ratio * (index === first.numbers.length - 1 ? 1 : 3);
  }, 0);
}

/** A key without its numbers: 60E1 is #E#, 12X50 is #X#. */
function kind(key: string): string {
  return key.replace(/\d+(?:\.\d+)?/g, '#');
}
