// Six whole statements to fill in. What is not known yet is written `?`, and names are those the plan has: no figure is made up.
import type { Thing } from '../../plan/types.ts';
import { evidence } from '../../vocabulary/index.ts';
import { spelled } from '../spelling.ts';
import type { Completion } from '../types.ts';
import { type Asked, completion } from './types.ts';

/** The snippets for what may stand under the block of this line, by the keyword they begin with. */
export function snippets(asked: Asked): readonly (Completion & { readonly keyword: string })[] {
  return all.flatMap(({ keyword, under, label, help, make }) => {
    const text = under.includes(asked.slot.block) ? make(asked) : null;
    return text === null ? [] : [{ ...completion(asked, 'snippet', label, { text, help, snippet: true }), keyword }];
  });
}

interface Snippet {
  readonly keyword: string;
  readonly under: readonly string[];
  readonly label: string;
  readonly help: string;
  readonly make: (asked: Asked) => string | null;
}

const choice = (stop: number, words: readonly string[]): string =>
  `\${${stop}|${words.map((word) => word.replace(/[,|\\}$]/g, '\\$&')).join(',')}|}`;

const all: readonly Snippet[] = [
  {
    keyword: 'plan',
    under: ['file'],
    label: 'plan …',
    help: 'The head of a plan: what, when, where.',
    make: ({ s }) =>
      s.plan.head
        ? null
        : `plan "\${1:what is lifted}": date \${2:?}, revision \${3:A}, site "\${4:where}"\n  units ${choice(5, ['metric', 'US'])}\n$0`,
  },
  {
    keyword: 'load',
    under: ['file'],
    label: 'load …',
    help: 'A load with a stated weight, what holds it, and its first part.',
    make: () =>
      `load "\${1:name}"\n  datum "\${2:where its zero stands, and how its axes run}"\n  stated \${3:?}, by ${choice(4, evidence)}, from "\${5:where the figure stands}"\n  \${6|held by,free|} "\${7:what holds it, or who saw that nothing does}"\n$0`,
  },
  {
    keyword: 'part',
    under: ['load', 'assembly'],
    label: 'part …',
    help: 'A part of one material in its place.',
    make: () =>
      `part "\${1:name}": ${choice(2, ['plate', 'box', 'envelope'])} \${3:?}, of \${4:carbon steel}, at (\${5:?}, \${6:?}, \${7:?})\n$0`,
  },
  {
    keyword: 'leg',
    under: ['rig'],
    label: 'leg …',
    help: 'A leg from the hook down, of gear and picks that are still free.',
    make: leg,
  },
  {
    keyword: 'crane',
    under: ['file'],
    label: 'crane …',
    help: 'A crane with what is deducted and where it stands.',
    make: ({ s }) => {
      const charts = s.plan.names.things
        .filter(({ kind }) => kind === 'chart')
        .map(({ name }) => spelled(name, 'named'));
      const read = charts.length ? `chart ${choice(3, charts)}` : 'capacity ${3:?}';
      return `crane "\${1:name}": kind ${choice(2, ['mobile', 'crawler', 'tower', 'loader', 'bridge', 'gantry', 'forklift', 'floating'])}, ${read}, setup "\${4:outriggers, counterweight, boom}"\n  deduct "\${5:what the chart counts as load}" \${6:?}\n  position "\${7:lift-off}": radius \${8:?}\n$0`;
    },
  },
  {
    keyword: 'chart',
    under: ['file'],
    label: 'chart …',
    help: "The maker's chart, to be typed row by row.",
    make: () =>
      'chart "${1:name}": setup "${2:what it is for}", from "${3:document and page}"\n  columns ${4:?}\n  radius ${5:?}: ${6:?}\n$0',
  },
];

/** Hook, sling, shackle and pick as the plan has them, the free ones first; null where one of these is missing. */
function leg({ s: { plan, results } }: Asked): string | null {
  const used = new Set(results.legs.flatMap(({ steps }) => steps.map(({ thing }) => thing)));
  const gear = (...keywords: readonly string[]) =>
    ordered(
      plan.names.things.filter(({ kind, item }) => kind === 'gear' && keywords.includes(item.keyword)),
      used,
    );
  const groups = [
    gear('block', 'hook', 'ball'),
    gear('sling'),
    gear('shackle', 'link'),
    ordered(
      plan.names.things.filter(({ kind }) => kind === 'pick'),
      used,
    ),
  ];
  if (groups.some((group) => !group.length)) return null;
  return `leg ${groups
    .map((group, i) =>
      choice(
        i + 1,
        group.slice(0, 12).map(({ name }) => spelled(name, 'named')),
      ),
    )
    .join(' > ')}\n$0`;
}

const ordered = (things: readonly Thing[], used: ReadonlySet<Thing>): readonly Thing[] => [
  ...things.filter((thing) => !used.has(thing)),
  ...things.filter((thing) => used.has(thing)),
];
