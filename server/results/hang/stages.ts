// What a stage of the lift leaves hanging and in which attitude: rigs and parts that are not there, an incline or a sweep, liquids that lie level in it.
import { identity, type Mat3, turn } from '../../mechanics/index.ts';
import { fold, type Item, namesOf, type Thing } from '../../plan/index.ts';
import { type Cause, type Derived, known, open, unique } from '../../quantities/derived.ts';
import { nearest } from '../../quantities/nearest.ts';
import type { Summed } from '../bodies.ts';
import type { Mass } from '../centre.ts';
import { settled } from '../liquid.ts';
import { because } from '../notes.ts';
import type { LoadResult } from '../types.ts';
import type { HangInput, HungFrom } from './hang.ts';

/** One attitude of a stage. */
export interface Step {
  readonly angle: number | null; // of the incline, rad; null: as drawn
  readonly R: Mat3; // the load's axes to the world
  readonly many: boolean; // one of the steps of a sweep
}

export interface Stage {
  readonly name: string;
  readonly item: Item;
  /** What hangs in it; without the legs of rigs and the parts that are not there. */
  readonly input: HangInput;
  readonly steps: readonly Step[];
}

const fine = Math.PI / 36; // 5 deg

/** A stage read, or why it is not worked out. */
export function readStage(
  item: Item,
  input: HangInput,
): Stage | { readonly name: string; readonly because: readonly Cause[] } {
  const name = item.names[0] ?? '';
  const tilt = item.clauses.get('incline')?.[0];
  const gone = goneIn(item, input);
  const causes = [...item.opens.map((at) => because('A line of the stage cannot be read.', at)), ...gone.because];
  if (tilt && tilt.value?.kind !== 'tilt') causes.push(because('The incline of the stage is not known.', tilt.at));
  if (causes.length) return { name, because: unique(causes) };
  const loads = input.loads.map((load) => (gone.parts.size ? withoutParts(load, gone.parts) : load));
  const steps: readonly Step[] =
    tilt?.value?.kind === 'tilt' ? stepsOf(tilt.value) : [{ angle: null, R: identity, many: false }];
  return {
    name,
    item,
    steps,
    input: { ...input, loads, legs: input.legs.filter((leg) => !leg.rig || !gone.rigs.has(leg.rig)) },
  };
}

type Tilt = {
  readonly axis: string;
  readonly from: { readonly value: number };
  readonly to: { readonly value: number } | null;
};

/** One attitude, or from one to the other in steps of at most 5 deg. `x 30 deg`: the x axis points 30 deg above horizontal, y stays level. */
function stepsOf({ axis, from, to }: Tilt): readonly Step[] {
  const way = (to?.value ?? from.value) - from.value;
  const n = to ? Math.max(1, Math.ceil(Math.abs(way) / fine - 1e-9)) : 0;
  return Array.from({ length: n + 1 }, (_, i) => {
    const angle = from.value + (n ? (way * i) / n : 0);
    const signed = axis.startsWith('-') ? -angle : angle;
    return {
      angle,
      many: n > 0,
      R: axis.endsWith('y') ? turn(signed, 'x') : axis.endsWith('z') ? upended(signed) : turn(signed, '-y'),
    };
  });
}

/** The load's z axis so far above horizontal, tipped towards x, y level. */
const upended = (angle: number): Mat3 => turn(Math.PI / 2 - angle, 'y');

/** Rigs and parts a stage is without. */
function goneIn(
  item: Item,
  { plan, notes }: HangInput,
): { readonly rigs: ReadonlySet<Thing>; readonly parts: ReadonlySet<Thing>; readonly because: readonly Cause[] } {
  const rigs = new Set<Thing>();
  const parts = new Set<Thing>();
  const causes: Cause[] = [];
  const clause = item.clauses.get('without')?.[0];
  const names = namesOf(item, 'without');
  if (clause && !names.length) causes.push(because('What the stage is without could not be read.', clause.at));
  for (const use of names) {
    const text = use.parts.map((part) => part.text);
    const key = fold(text.at(-1) ?? '');
    const fits = (thing: Thing): boolean =>
      text.slice(0, -1).every((one) => thing.path.slice(0, -1).map(fold).includes(fold(one)));
    const found = (['rig', 'part', 'assembly'] as const).flatMap((kind) => plan.names.find(kind, key)).filter(fits);
    const [thing, second] = found;
    if (!thing || second || thing.clash || use.until) {
      const all = plan.names.things
        .filter((one) => one.kind === 'rig' || one.kind === 'part' || one.kind === 'assembly')
        .map((one) => one.name);
      const at = { row: clause?.at.row ?? item.at.row, from: use.span.from, to: use.span.to };
      if (second && !thing?.clash) causes.push(because(`${text.join('.')} stands for several things.`, at));
      else if (thing)
        causes.push(because(thing.clash ? `${thing.name} is stated twice.` : 'A range cannot stand here.', at));
      else
        causes.push(
          notes.add(
            'name-unknown',
            at,
            {
              name: text.join('.'),
              nearest: nearest(text.at(-1) ?? '', all),
              wanted: 'a rig, a part or an assembly',
              is: plan.names.things.find((one) => one.key === key)?.kind ?? null,
              declare: null,
            },
            `${text.join('.')} is not known.`,
          ),
        );
    } else if (thing.kind === 'rig') rigs.add(thing);
    else parts.add(thing);
  }
  return { rigs, parts, because: causes };
}

const isIn = (thing: Thing, gone: ReadonlySet<Thing>): boolean =>
  gone.has(thing) || (thing.owner !== null && isIn(thing.owner, gone));

/** The load without some of its parts: what they weigh at the least is taken off, the centre follows from what is left. */
export function withoutParts(load: HungFrom, gone: ReadonlySet<Thing>): HungFrom {
  const masses = load.body.masses.filter((mass) => isIn(mass.thing, gone));
  const { governing } = load;
  if (!masses.length || !governing) return load;
  const at = load.thing.item.nameAt;
  const causes = unique(masses.flatMap((mass) => mass.weight.because));
  if (causes.length || load.weight.value === null || governing.weight.value === null)
    return {
      ...load,
      weight: open('kg', unique([...causes, ...load.weight.because]), { at }),
      cog: load.cog.map(() =>
        open('m', unique([...causes, ...load.weight.because]), { at }),
      ) as unknown as LoadResult['cog'],
    };
  const off = masses.reduce((sum, mass) => sum + (mass.weight.value as number), 0);
  const least = masses.reduce((sum, mass) => sum + (mass.weight.low as number), 0);
  // Only a sum whose parts all take one allowance loses that of the part as well; of any other figure the bare part is taken off.
  const even = governing.kind === 'calculated' && leavesOf(load.body).every((leaf) => leaf.contingency === null);
  const takenOff = known(least * (even ? 1 + governing.allowance : 1), 'kg', {
    formula: even ? 'parts * (1 + allowance)' : 'parts',
    inputs: [
      { label: 'parts', value: known(least, 'kg') },
      ...(even ? [{ label: 'allowance', value: known(governing.allowance, '1') }] : []),
    ],
  });
  const left = load.weight.value - (takenOff.value as number);
  const weight =
    left > 0
      ? known(left, 'kg', {
          formula: 'weight - takenOff',
          inputs: [
            { label: 'weight', value: load.weight },
            { label: 'takenOff', value: takenOff },
          ],
          source: load.weight.source,
          at,
        })
      : open('kg', [because(`Nothing of ${load.thing.name} is left.`, at)], { at });
  const whole =
    load.cogFrom === 'calculated' ? (load.body.weight.value ?? governing.weight.value) : governing.weight.value;
  return {
    ...load,
    weight,
    cog: load.cog.map((value, axis) => centreWithout(value, axis, masses, whole, off)) as unknown as LoadResult['cog'],
  };
}

function centreWithout(value: Derived, axis: number, masses: readonly Mass[], whole: number, off: number): Derived {
  const causes = unique([...value.because, ...masses.flatMap((mass) => [...(mass.open[axis] ?? []), ...mass.because])]);
  if (causes.length || value.value === null || masses.some((mass) => !mass.centre))
    return open('m', causes, { at: value.at });
  if (!(whole > off * (1 + 1e-9)))
    return open('m', [because('Nothing is left that has a centre.', value.at as never)], { at: value.at });
  const moment = masses.reduce(
    (sum, mass) => sum + (mass.weight.value as number) * ((mass.centre as readonly number[])[axis] as number),
    0,
  );
  const loose = masses.reduce((sum, mass) => sum + (mass.weight.value as number) * (mass.slack[axis] as number), 0);
  const at = (x: number): number => (whole * x - moment) / (whole - off);
  const slack = loose / (whole - off);
  return known(
    at(value.value),
    'm',
    {
      formula: '(weight * centre - parts * theirCentre) / (weight - parts)',
      inputs: [
        { label: 'weight', value: known(whole, 'kg') },
        { label: 'centre', value },
        { label: 'parts', value: known(off, 'kg') },
        { label: 'theirCentre', value: known(off > 0 ? moment / off : 0, 'm') },
      ],
      source: value.source,
      at: value.at,
    },
    at(value.low as number) - slack,
    at(value.high as number) + slack,
  );
}

const leavesOf = (body: Summed): readonly Summed[] => (body.part ? [body] : body.bodies.flatMap(leavesOf));

/** The load with its liquids level in another attitude: the centre moves with them. */
export function levelled(load: HungFrom, R: Mat3): HungFrom {
  if (R.every((x, i) => x === identity[i])) return load;
  const liquids = leavesOf(load.body).filter(
    (leaf) => leaf.part?.kind === 'liquid' && leaf.thing.item.clauses.has('inside'),
  );
  const whole = load.cogFrom === 'calculated' ? load.body.weight.value : (load.governing?.weight.value ?? null);
  if (!liquids.length || whole === null) return load;
  const shifts = liquids.map((leaf) => {
    const mass = load.body.masses.find((one) => one.thing === leaf.thing);
    const centre = leaf.volume.value === null ? null : settled(leaf.thing, load.layout, leaf.volume.value, R);
    return mass?.centre && centre && mass.weight.value !== null
      ? { share: mass.weight.value / whole, by: centre.map((x, i) => x - (mass.centre?.[i] ?? 0)) }
      : null;
  });
  const lost = shifts.includes(null);
  const cog = load.cog.map((value, axis) => {
    if (value.value === null) return value;
    if (lost)
      return open(
        'm',
        [because(`Where the liquid in ${load.thing.name} lies in this attitude is not known.`, value.at as never)],
        { at: value.at },
      );
    const by = shifts.reduce((sum, one) => sum + (one?.share ?? 0) * (one?.by[axis] ?? 0), 0);
    return known(
      value.value + by,
      'm',
      {
        formula: 'asDrawn + byLiquids',
        inputs: [
          { label: 'asDrawn', value },
          { label: 'byLiquids', value: known(by, 'm') },
        ],
        source: value.source,
        at: value.at,
      },
      (value.low as number) + by,
      (value.high as number) + by,
    );
  });
  return { ...load, cog: cog as unknown as LoadResult['cog'] };
}
