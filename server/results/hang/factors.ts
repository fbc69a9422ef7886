// A rating with the factors on it, each shown with what it rests on.
import type { Factor } from '../../catalog/index.ts';
import type { Thing } from '../../plan/index.ts';
import { asWritten, type Derived, type Input, known } from '../../quantities/derived.ts';
import type { Place } from '../../syntax/types.ts';

export const factor = (label: string, { share, source }: Factor, at: Place): Input => ({
  label,
  value: known(share, '1', { source, at }),
});
export const tagInput = (
  label: string,
  sling: Thing,
  tag: {
    readonly quantity: { readonly value: number; readonly low: number; readonly high: number };
    readonly at: Place;
  },
): Input => ({
  label,
  value: asWritten(tag, 'kg', `tag of ${sling.name}`),
});

/** A rating times factors, and over a divisor, with each of them shown. */
export function times(
  base: Input,
  factors: readonly Input[],
  over: { readonly label: string; readonly value: number } | null = null,
): Derived {
  const { value } = base;
  if (value.value === null || (!factors.length && !over)) return value;
  const share = factors.reduce((product, one) => product * (one.value.value as number), 1) / (over?.value ?? 1);
  const divisor =
    over && !/^\d/.test(over.label)
      ? [
          {
            label: over.label,
            value: known(over.value, '1', {
              source: 'parts of a doubled sling share 45 to 55 (0027/ND rev 11.2, 5.8)',
            }),
          },
        ]
      : [];
  const formula = [base.label, ...factors.map((one) => one.label)].join(' * ') + (over ? ` / ${over.label}` : '');
  return known(
    value.value * share,
    'kg',
    {
      formula,
      inputs: [base, ...factors, ...divisor],
      source: value.source,
      at: value.at,
      assumptions: value.assumptions,
    },
    (value.low as number) * share,
    (value.high as number) * share,
  );
}

export const assuming = (value: Derived, assumptions: readonly string[]): Derived =>
  assumptions.length ? { ...value, assumptions: [...value.assumptions, ...assumptions] } : value;
