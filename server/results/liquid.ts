// What a liquid weighs and where it lies: at the bottom of the insides it is in, its surface level in the attitude drawn.
import {
  compose,
  fill,
  interior,
  levelFor,
  levels,
  type Mat3,
  mean,
  rotate,
  type Space,
  transpose,
  type Vec3,
} from '../mechanics/index.ts';
import { given, type Item, namesOf, openLines, type Thing } from '../plan/index.ts';
import { type Cause, type Derived, known, open, unique } from '../quantities/derived.ts';
import { massOfVolume } from './mass.ts';
import { because, Notes } from './notes.ts';
import { type Part, partOf } from './part.ts';
import { isLiquid, type Layout } from './place.ts';
import { countOf, countOpen } from './placing.ts';
import type { Frame } from './solid.ts';

export interface Lying {
  readonly mass: Derived;
  readonly volume: Derived;
  readonly centre: Vec3 | null; // in the load's axes
  readonly because: readonly Cause[]; // why the centre is not known
}

/** A liquid part of a load. Names under `inside` are hollow parts, or assemblies with hollow parts: one space. */
export function lying(item: Item, part: Part, frame: () => Frame, layout: Layout, notes: Notes): Lying {
  const at = item.clauses.get('liquid')?.[0]?.at ?? item.at;
  const lines = openLines(item);
  const names = namesOf(item, 'inside');
  const spaces = item.clauses.has('inside') ? spacesOf(item, names, layout, notes) : [];
  if ('because' in spaces) return opened(spaces.because, at);
  const count = countOf(item);
  const { frames, many } = frame();
  if (many || count === null) return opened([many ?? countOpen(item, item.names[0] ?? '')], at);
  const volume = volumeOf(item, spaces, at, notes, frames.length * count);
  if (volume.value === null) return opened([...lines, ...volume.because], at);
  const density = part.density ?? open('kg/m3', [because('Nothing says what it is.', at)]);
  const mass = lines.length
    ? open('kg', unique([...lines, ...density.because]), { at })
    : massOfVolume(volume, density, { at });
  if (!spaces.length) return { mass, volume, ...loose(item, frame, layout) };
  const level = levelFor(volume.value, spaces);
  const centre = level === undefined ? undefined : fill(spaces, level).centre;
  return { mass, volume, centre: centre ?? null, because: centre ? [] : [because('It does not lie anywhere.', at)] };
}

/** Where so much of a liquid lies with the load turned by R, in the load's axes; null where its space is not known. */
export function settled(thing: Thing, layout: Layout, volume: number, R: Mat3): Vec3 | null {
  const spaces = spacesOf(thing.item, namesOf(thing.item, 'inside'), layout, new Notes());
  if ('because' in spaces) return null;
  const turned = spaces.map((space) => ({ ...space, place: compose({ R, t: [0, 0, 0] }, space.place) }));
  const level = levelFor(volume, turned);
  const centre = level === undefined ? undefined : fill(turned, level).centre;
  return centre ? rotate(transpose(R), centre) : null;
}

const opened = (causes: readonly Cause[], at: unknown): Lying => ({
  mass: open('kg', unique(causes), { at }),
  volume: open('m3', unique(causes), { at }),
  centre: null,
  because: causes,
});

/** A liquid that is in nothing: its centre stands `at`. */
function loose(
  item: Item,
  frame: () => Frame,
  layout: Layout,
): { readonly centre: Vec3 | null; readonly because: readonly Cause[] } {
  const placed = layout.place(item);
  const { frames, outer } = frame();
  const causes = [...placed.open.flat(), ...outer.open.flat()];
  if (!item.clauses.has('at'))
    return { centre: null, because: [because(`Nothing says where ${item.names[0]} lies.`, item.at)] };
  if (causes.length) return { centre: null, because: causes };
  const at = frames.flatMap((one) => placed.copies.map((copy) => compose(one, copy).t));
  return { centre: mean(at), because: [] };
}

function spacesOf(
  item: Item,
  names: ReturnType<typeof namesOf>,
  layout: Layout,
  notes: Notes,
): readonly Space[] | { readonly because: readonly Cause[] } {
  const spaces: Space[] = [];
  const causes: Cause[] = [];
  if (!names.length) causes.push(because('What it is inside could not be read.', item.at));
  for (const name of names) {
    const thing = layout.find(name, item);
    if ('what' in thing) causes.push(thing);
    else {
      const found = hollows(thing, layout);
      if (!found.some((one) => one.spaces.length) && !found.some((one) => one.because.length)) {
        const clause = item.clauses.get('inside')?.[0];
        causes.push(
          notes.add(
            'name-unknown',
            { row: clause?.at.row ?? item.at.row, from: name.span.from, to: name.span.to },
            {
              name: thing.name,
              nearest: [],
              wanted: 'a hollow part',
              is: `${thing.kind} without an inside`,
              declare: null,
            },
            `${thing.name} has no inside.`,
          ),
        );
      }
      for (const one of found) {
        spaces.push(...one.spaces);
        causes.push(...one.because);
      }
    }
  }
  return causes.length ? { because: causes } : spaces;
}

/** The insides of a part, or of all hollow parts of an assembly, in the load's axes. */
function hollows(
  thing: Thing,
  layout: Layout,
): readonly { readonly spaces: readonly Space[]; readonly because: readonly Cause[] }[] {
  if (thing.kind === 'assembly')
    return layout.plan.names.things
      .filter((one) => one.owner === thing && (one.kind === 'part' || one.kind === 'assembly') && !isLiquid(one.item))
      .flatMap((one) => hollows(one, layout));
  const part = partOf(thing.item, layout.plan);
  if (part.kind === 'open') return [{ spaces: [], because: part.mass.because }];
  const inside = part.shape && interior(part.shape);
  if (!inside || part.kind !== 'solid') return [];
  const placed = layout.place(thing.item);
  const frames = layout.frames(thing.owner);
  const many =
    placed.count === null ? countOpen(thing.item, thing.name) : layout.tooMany(thing.item, frames.length, new Notes());
  const causes = [
    layout.copiesOpen(thing.owner) ?? many ?? [],
    ...placed.open.flat(),
    ...layout.frameOpen(thing.owner).open.flat(),
  ].flat();
  if (causes.length) return [{ because: causes, spaces: [] }];
  return [
    {
      because: [],
      spaces: frames.flatMap((frame) =>
        placed.copies.map((copy) => ({ interior: inside, place: compose(frame, copy) })),
      ),
    },
  ];
}

/** Its volume in all: as stated, for each copy of it and of the assembly it stands in; a share of the inside, or what lies below a level. */
function volumeOf(
  item: Item,
  spaces: readonly Space[],
  at: NonNullable<ReturnType<Item['clauses']['get']>>[number]['at'],
  notes: Notes,
  copies: number,
): Derived {
  const stated = given(item, 'liquid');
  const share = given(item, 'fill');
  const level = given(item, 'level');
  const whole = spaces.reduce((total, space) => total + space.interior.volume, 0);
  const inside = known(whole, 'm3', { source: 'closed form', at });
  const states = [
    stated.state === 'known' || item.clauses.get('liquid')?.[0]?.value?.kind === 'unknown',
    item.clauses.has('fill'),
    item.clauses.has('level'),
  ].filter(Boolean).length;
  if (states > 1)
    return open(
      'm3',
      [
        notes.add(
          'stated-twice',
          at,
          { name: 'how much there is', place: 'this liquid' },
          'How much there is is stated twice.',
        ),
      ],
      { at },
    );
  if (share.state === 'open' || level.state === 'open')
    return open(
      'm3',
      [...(share.state === 'open' ? share.because : []), ...(level.state === 'open' ? level.because : [])],
      { at },
    );
  if (stated.state === 'known') {
    const [value, low, high] = [stated.quantity.value, stated.quantity.low, stated.quantity.high].map(
      (one) => one * copies,
    ) as [number, number, number];
    if (spaces.length && value > whole * (1 + 1e-9))
      return open(
        'm3',
        [
          notes.add(
            'geometry-impossible',
            at,
            { shape: 'liquid', reason: 'does-not-fit', figures: [value, whole] },
            'There is more liquid than space.',
          ),
        ],
        { at },
      );
    const each = known(stated.quantity.value, 'm3', { source: 'typed here', at });
    const inputs = [
      { label: 'each', value: each },
      { label: 'count', value: known(copies, '1') },
    ];
    const origin = copies === 1 ? { source: 'typed here', at } : { formula: 'each * count', inputs, at };
    return known(value, 'm3', origin, low, high);
  }
  if (share.state === 'known' && spaces.length)
    return known(
      whole * share.quantity.value,
      'm3',
      {
        formula: 'inside * fill',
        inputs: [
          { label: 'inside', value: inside },
          { label: 'fill', value: known(share.quantity.value, '1') },
        ],
        at,
      },
      whole * share.quantity.low,
      whole * share.quantity.high,
    );
  if (level.state === 'known' && spaces.length) {
    const lowest = Math.min(...spaces.map((space) => levels(space.interior, space.place).lowest));
    const highest = Math.max(...spaces.map((space) => levels(space.interior, space.place).highest));
    const below = (depth: number) => fill(spaces, lowest + depth).volume;
    const { value, low, high } = level.quantity;
    if (value > (highest - lowest) * (1 + 1e-9))
      return open(
        'm3',
        [
          notes.add(
            'value-outside',
            level.at,
            {
              clause: 'level',
              value: item.node.row.text.slice(level.at.from, level.at.to),
              reason: 'it is above the top of the inside',
            },
            'The level is above the top of the inside.',
          ),
        ],
        { at },
      );
    return known(
      below(value),
      'm3',
      {
        formula: 'inside * shareFilled',
        inputs: [
          { label: 'inside', value: inside },
          {
            label: 'shareFilled',
            value: known(whole > 0 ? below(value) / whole : 0, '1', {
              formula: 'share of the inside below the level',
              inputs: [{ label: 'level', value: known(value, 'm') }],
            }),
          },
        ],
        source: 'closed form',
        at,
      },
      below(low),
      below(high),
    );
  }
  const cause =
    stated.state === 'open'
      ? stated.because
      : [
          notes.add(
            'clause-missing',
            at,
            {
              item: item.names[0] ?? 'liquid',
              clause: spaces.length ? 'fill' : 'a volume',
              why: 'how much there is: a volume, or `fill` or `level` in what it is `inside`',
            },
            'Nothing says how much there is.',
          ),
        ];
  return open('m3', cause, { at });
}
