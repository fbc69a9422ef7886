// Timber of a stated moisture: its density by species, or by the density of its dry wood.
import { nearestWoods, wood } from '../catalog/index.ts';
import { mostMoisture, timberDensity } from '../mechanics/index.ts';
import { type BoundClause, type BoundPlan, clauseOf, fold, given, has, type Item, textOf } from '../plan/index.ts';
import { type Cause, type Derived, known, open, unique } from '../quantities/derived.ts';
import { because, type Notes } from './notes.ts';

const water = 1000; // kg/m3
/** How far the wood of one tree lies from its species, as a share: twice the Wood Handbook's coefficient of variation (10 %, ch. 5). */
const spread = 0.2;

/** The basic gravity of a wood: its dry weight by its green volume, against water. */
interface Basic {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** Density in kg/m3 of wood of that moisture. `plain` is what its `density`, or a material of the plan, says of the dry wood. */
export function timber(item: Item, plan: BoundPlan, plain: () => Derived, notes: Notes): Derived {
  const at = clauseOf(item, 'moisture')?.valueAt ?? item.at;
  const moisture = given(item, 'moisture');
  const basic = basicOf(item, plan, plain, notes);
  const causes = [
    ...(moisture.state === 'open'
      ? moisture.because
      : moisture.state === 'known'
        ? []
        : [because('moisture gives no figure.', at)]),
    ...('because' in basic ? basic.because : []),
  ];
  if (moisture.state !== 'known' || 'because' in basic) return open('kg/m3', unique(causes), { at });
  const { value, low, high } = moisture.quantity;
  if (value > mostMoisture({ basic: basic.value })) {
    const facts = {
      clause: 'moisture',
      value: at.row.text.slice(at.from, at.to),
      reason: 'it is more than the pores of this wood can hold',
    };
    return open('kg/m3', [notes.add('value-outside', at, facts, 'The wood cannot hold that much water.')], { at });
  }
  return known(
    timberDensity({ water, basic: basic.value, moisture: value }),
    'kg/m3',
    {
      formula: timberDensity.text,
      inputs: [
        { label: 'water', value: known(water, 'kg/m3') },
        {
          label: 'basic',
          value: known(basic.value, '1', { source: basic.source, at: item.at }, basic.low, basic.high),
        },
        { label: 'moisture', value: known(value, '1', { source: 'typed here', at: moisture.at }, low, high) },
      ],
      source: basic.source,
      assumptions: [
        `${basic.low < basic.value ? 'within a fifth of its species; ' : ''}moisture as a share of the dry wood`,
      ],
      at,
    },
    timberDensity({ water, basic: basic.low, moisture: low }),
    timberDensity({ water, basic: basic.high, moisture: high }),
  );
}

function basicOf(
  item: Item,
  plan: BoundPlan,
  plain: () => Derived,
  notes: Notes,
): Basic | { readonly because: readonly Cause[] } {
  const name = textOf(item, 'of');
  const own = name !== null && plan.names.find('material', fold(name)).length > 0;
  if (name === null || own || has(item, 'density')) {
    if (!has(item, 'of') && !has(item, 'density')) return { because: [strange(item, notes)] };
    const dry = plain();
    if (dry.value === null) return { because: dry.because };
    return {
      value: dry.value / water,
      low: (dry.low as number) / water,
      high: (dry.high as number) / water,
      source: dry.source,
    };
  }
  const found = wood(name);
  if (found) {
    const { basic, source } = found;
    return { value: basic, low: basic * (1 - spread), high: basic * (1 + spread), source: `${found.name}: ${source}` };
  }
  const at = clauseOf(item, 'of')?.valueAt ?? item.at;
  const nearest = nearestWoods(name).map((near) => ({
    name: near.name,
    density: timberDensity({ water, basic: near.basic, moisture: 0.12 }),
  }));
  return {
    because: [
      notes.add('material-unknown', at, { name, nearest, woods: true }, `${name} is not among the woods known here.`),
    ],
  };
}

/** Moisture of what says of no wood that it is one. */
function strange(item: Item, notes: Notes): Cause {
  const { keywordAt } = clauseOf(item, 'moisture') as BoundClause;
  const facts = {
    keyword: 'moisture',
    parent: item.keyword,
    parents: ['parts `of` a wood, or with the `density` of dry wood'],
  };
  return notes.add('place-wrong', keywordAt, facts, 'It has moisture, but is of no wood.');
}
