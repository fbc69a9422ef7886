// What one copy of a part weighs: volume times density or the mass of a table, less what is cut out, with both tolerances.
import { type Impossible, type Solid, solid } from '../mechanics/index.ts';
import { given, type Item, textOf } from '../plan/index.ts';
import { type Derived, known, type Origin, open, unique } from '../quantities/derived.ts';
import { because } from './notes.ts';
import { steelDensity } from './reinforcement.ts';
import { type ShapeRead, sizesOf } from './shape.ts';

/** A volume less what is cut out of it. */
export function lessCut(gross: Derived, cut: number, origin: Origin): Derived {
  if (cut === 0) return gross;
  const inputs = [
    { label: 'whole', value: gross },
    { label: 'cut', value: known(cut, 'm3', { at: origin.at }) },
  ];
  const less = { ...origin, formula: 'whole - cut', inputs };
  const [low, high] = [Math.max((gross.low as number) - cut, 0), (gross.high as number) - cut];
  return known((gross.value as number) - cut, 'm3', less, low, high);
}

/** What one copy weighs: a table's mass, or volume times density; less what is cut out. */
export function massOf(
  body: Solid,
  [low, high]: Ends,
  volume: Derived | null,
  density: Derived | null,
  origin: Parameters<typeof known>[2] & object,
  read: ShapeRead,
  cut: number,
): Derived {
  if (body.mass !== undefined) {
    const listed = known(body.mass, 'kg', origin, Math.min(low, body.mass), Math.max(high, body.mass));
    if (!density || read.name === 'sheet')
      return cut === 0 ? listed : less(listed, cut, read.listedDensity ?? steelDensity);
    if (density.value === null) return open('kg', density.because, { at: origin.at });
    if (read.name !== 'section') return cut === 0 ? listed : less(listed, cut, density.value);
    const ratio = density.value / steelDensity; // a section of another metal: the table's steel weight by the ratio of densities
    return known(
      body.mass * ratio,
      'kg',
      {
        ...origin,
        formula: 'asSteel * density / densityOfSteel',
        inputs: [
          { label: 'asSteel', value: listed },
          { label: 'density', value: density },
          { label: 'densityOfSteel', value: known(steelDensity, 'kg/m3') },
        ],
      },
      low * ratio,
      high * ratio,
    );
  }
  if (!volume || !density) return open('kg', [because('Nothing says what it is made of.', null as never)], origin);
  return massOfVolume(volume, density, origin);
}

/** What makers' weights run over the nominal body. */
export function withAllowance(nominal: Derived, { allowance }: ShapeRead): Derived {
  if (!allowance || nominal.value === null) return nominal;
  const { factor, source } = allowance;
  const inputs = [
    { label: 'nominal', value: nominal },
    { label: 'allowance', value: known(factor, '1', { source, at: nominal.at }) },
  ];
  const { assumptions, at } = nominal;
  const origin = { formula: 'nominal * allowance', inputs, source: nominal.source, assumptions, at };
  const [low, high] = [nominal.low as number, nominal.high as number];
  return known(nominal.value * factor, 'kg', origin, low * factor, high * factor);
}

/** The davit or hinge of a manway, as stated; `none` is none. */
export function withDavit(bare: Derived, item: Item): Derived {
  const davit = given(item, 'davit');
  if (davit.state !== 'known' || bare.value === null) return bare;
  const { value, low, high } = davit.quantity;
  const stated = known(value, 'kg', { source: textOf(item, 'from') ?? 'typed here', at: davit.at }, low, high);
  const inputs = [
    { label: 'bare', value: bare },
    { label: 'davit', value: stated },
  ];
  const { source, assumptions, at } = bare;
  const ends = [(bare.low as number) + low, (bare.high as number) + high] as const;
  return known(bare.value + value, 'kg', { formula: 'bare + davit', inputs, source, assumptions, at }, ...ends);
}

/** Volume times density, with both tolerances. */
export function massOfVolume(
  volume: Derived,
  density: Derived,
  { assumptions = [], at }: Pick<NonNullable<Parameters<typeof known>[2]>, 'assumptions' | 'at'>,
): Derived {
  if (volume.value === null || density.value === null)
    return open('kg', unique([...volume.because, ...density.because]), { at });
  return known(
    volume.value * density.value,
    'kg',
    {
      formula: 'volume * density',
      inputs: [
        { label: 'volume', value: volume },
        { label: 'density', value: density },
      ],
      source: density.source,
      assumptions: [...assumptions, ...density.assumptions],
      at,
    },
    (volume.low as number) * (density.low as number),
    (volume.high as number) * (density.high as number),
  );
}

/** A table's mass less what is cut out. */
function less(listed: Derived, cut: number, density: number): Derived {
  const off = cut * density;
  return known(
    (listed.value as number) - off,
    'kg',
    {
      formula: 'listed - cut * density',
      inputs: [
        { label: 'listed', value: listed },
        { label: 'cut', value: known(cut, 'm3') },
        { label: 'density', value: known(density, 'kg/m3') },
      ],
      source: listed.source,
      assumptions: listed.assumptions,
      at: listed.at,
    },
    (listed.low as number) - off,
    (listed.high as number) - off,
  );
}

type Ends = readonly [low: number, high: number];

/** Least and greatest volume and mass of a body over the tolerances of its sizes; why it cannot be made where the heavy end cannot. */
export function endsOf(read: ShapeRead, body: Solid): Readonly<Record<'volume' | 'mass', Ends>> | Impossible {
  const [volume, mass] = [ends(read, body, 'volume'), ends(read, body, 'mass')];
  return 'impossible' in volume ? volume : 'impossible' in mass ? mass : { volume, mass };
}

/**
 * Every size moves the figure one way, so each is tried at both ends. Sizes that cannot be made leave nothing at the light end; at the
 * heavy end nobody knows how much, so that is why it cannot be made.
 */
function ends(read: ShapeRead, body: Solid, of: 'volume' | 'mass'): Ends | Impossible {
  const now = body[of];
  if (now === undefined) return [Number.NaN, Number.NaN]; // its shape has none
  const loose = Object.entries(read.sizes).filter(([, q]) => q.low !== q.high);
  if (!loose.length) return [now, now];
  const nominal = sizesOf(read.sizes, (q) => q.value);
  const figure = (sizes: Readonly<Record<string, number>>): number => {
    const made = solid(read.make(sizes));
    return 'impossible' in made ? Number.NaN : (made[of] ?? Number.NaN);
  };
  const least = { ...nominal };
  const most = { ...nominal };
  for (const [key, q] of loose) {
    const [below, above] = [figure({ ...nominal, [key]: q.low }), figure({ ...nominal, [key]: q.high })];
    const grows = Number.isNaN(below) ? above >= now : Number.isNaN(above) ? below <= now : above >= below;
    least[key] = grows ? q.low : q.high;
    most[key] = grows ? q.high : q.low;
  }
  const heaviest = solid(read.make(most));
  if ('impossible' in heaviest) return heaviest;
  const low = figure(least);
  return [Number.isNaN(low) ? 0 : low, heaviest[of] ?? Number.NaN];
}
