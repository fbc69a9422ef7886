// What a part is made of: its density, from the plan's own materials or the catalog, or why it is not known.
import { material as listed, type Material, nearestMaterials } from '../catalog/index.ts';
import { type BoundPlan, fold, given, has, type Item, openLines, type Thing, textOf } from '../plan/index.ts';
import { type Derived, known, open } from '../quantities/derived.ts';
import { because, type Notes, notYet } from './notes.ts';
import { reinforced } from './reinforcement.ts';
import { timber } from './timber.ts';

/**
 * Density in kg/m3 of a part or liquid, with the water in it where it is wood of a stated `moisture`, and the steel where
 * `reinforcement` says how much of the volume it takes up or how much of it there is in each; `unless` is the density taken where neither material nor density is said.
 */
export function densityOf(item: Item, plan: BoundPlan, notes: Notes, unless?: { readonly name: string }): Derived {
  const plain = () => plainDensity(item, plan, notes, unless);
  return reinforced(item, has(item, 'moisture') ? timber(item, plan, plain, notes) : plain(), notes);
}

function plainDensity(item: Item, plan: BoundPlan, notes: Notes, unless?: { readonly name: string }): Derived {
  const stated = given(item, 'density');
  const of = item.clauses.get('of')?.[0];
  if (stated.state !== 'absent' && of) {
    const facts = { name: `what ${item.names[0] ?? item.keyword} is made of`, place: '"of"' };
    const cause = notes.add(
      'stated-twice',
      item.clauses.get('density')?.[0]?.at ?? item.at,
      facts,
      'Its density is stated twice.',
      [{ at: of.at, says: 'stated here' }],
    );
    return open('kg/m3', [cause], { at: item.at });
  }
  if (stated.state !== 'absent') {
    if (stated.state === 'known')
      return known(
        stated.quantity.value,
        'kg/m3',
        { source: textOf(item, 'from') ?? 'typed here', at: stated.at },
        stated.quantity.low,
        stated.quantity.high,
      );
    return open('kg/m3', stated.state === 'open' ? stated.because : [because('No density is given.', item.at)], {
      at: item.at,
    });
  }
  if (!of) {
    if (unless) return fromCatalog(listed(unless.name) as Material, item, notes, false);
    if (item.opens.length) return open('kg/m3', openLines(item), { at: item.at }); // what is missing may stand in what cannot be read
    return open(
      'kg/m3',
      [
        notes.add(
          'clause-missing',
          item.at,
          {
            item: item.names[0] ?? item.keyword,
            clause: 'of',
            why: 'what it is made of, such as `of carbon steel`, or a `density`',
          },
          `${item.names[0] ?? item.keyword} has no material.`,
        ),
      ],
      { at: item.at },
    );
  }
  if (of.value?.kind !== 'text') {
    const name = item.names[0] ?? item.keyword;
    const unknown = of.value?.kind === 'unknown';
    const why = unknown
      ? notYet(`What ${name} is made of is`, of.at)
      : because(`What ${name} is made of could not be read.`, of.at);
    return open('kg/m3', [why], { at: of.at });
  }
  return byName(of.value.text, item, plan, notes);
}

function byName(name: string, item: Item, plan: BoundPlan, notes: Notes): Derived {
  const at = item.clauses.get('of')?.[0]?.valueAt ?? item.at;
  const own = plan.names.find('material', fold(name));
  const [first] = own;
  if (first && lighterThanListed(first)) {
    const facts = { name: first.name, as: 'material' as const };
    return open(
      'kg/m3',
      [
        notes.add(
          'name-reserved',
          first.item.nameAt,
          facts,
          `${first.name} is already in the tables, and heavier there.`,
        ),
      ],
      { at },
    );
  }
  if (first)
    return first.clash
      ? open('kg/m3', [because(`${name} is stated twice.`, first.item.at)], { at })
      : ownMaterial(first);
  const found = listed(name);
  if (found) return fromCatalog(found, item, notes, true);
  const nearest = nearestMaterials(name).map((near) => ({ name: near.name, density: near.density }));
  return open(
    'kg/m3',
    [notes.add('material-unknown', at, { name, nearest }, `${name} is not among the materials known here.`)],
    { at },
  );
}

/** A material of the plan that has the name of a listed one and is lighter: whoever writes the name expects the listed one. */
function lighterThanListed({ item, name }: Thing): boolean {
  const table = listed(name);
  const density = given(item, 'density');
  return table !== undefined && density.state === 'known' && density.quantity.value < table.density * 0.98;
}

function ownMaterial({ item, name }: Thing): Derived {
  const density = given(item, 'density');
  const lines = openLines(item);
  if (density.state === 'known' && !lines.length)
    return known(
      density.quantity.value,
      'kg/m3',
      { source: `${name}: ${textOf(item, 'from') ?? 'typed in the plan'}`, at: item.at },
      density.quantity.low,
      density.quantity.high,
    );
  return open(
    'kg/m3',
    density.state === 'open' ? density.because : lines.length ? lines : [because(`${name} has no density.`, item.at)],
    { at: item.at },
  );
}

function fromCatalog(found: Material, item: Item, notes: Notes, named: boolean): Derived {
  const at = item.clauses.get('of')?.[0]?.valueAt ?? item.at;
  if (found.choices.length)
    notes.add(
      'material-doubtful',
      at,
      { material: found.name, low: found.low, high: found.high, used: found.density, choices: found.choices },
      '',
    );
  return known(found.density, 'kg/m3', {
    source: `${found.name}: ${found.source}`,
    assumptions: named ? [] : [`made of ${found.name}, since nothing else is said`],
    at,
  });
}
