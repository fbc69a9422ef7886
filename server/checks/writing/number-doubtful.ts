// A number with three digits behind its point: perhaps the point was meant to group thousands.
import { numberInWords } from '../../quantities/index.ts';
import { check } from '../check.ts';
import { rewrite } from '../edits.ts';
import { undoubted, written } from '../wording.ts';

export const numberDoubtful = check({
  slug: 'number-doubtful',
  severity: 'warning',
  effect: 'stands',
  says: ({ facts }) => `${facts.text} is read as ${aloud(facts)}. If the point groups thousands, write ${facts.other}.`,
  fixes: ({ at, facts }) => [
    rewrite(at, facts.other),
    rewrite(at, undoubted(written(at)), { title: `Keep it as ${aloud(facts)}` }),
  ],
});

const aloud = ({ short, unit }: { readonly short: string; readonly unit: string }): string =>
  `${short} ${unit} (${numberInWords(short)})`;
