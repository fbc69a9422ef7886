// The section "Standing": open points first, each with its line; then what a person must decide, and what nobody stated.
import type { Finding } from '../../checks/index.ts';
import type { Result } from '../../results/types.ts';
import { placeIn } from '../places.ts';
import { type Gap, type Standing, standingWords } from '../standing.ts';
import { type Context, linkTo } from './context.ts';
import { row } from './figures.ts';
import type { Block, Cell, Row, Section, Table } from './types.ts';
import { capital, quoted } from './written.ts';

export function standingSection(context: Context, standing: Standing): Section {
  const { over, atOdds, notJudged, gaps, setAside, toDecide, remarks, notStated } = standing;
  return {
    id: 'standing',
    title: 'Standing',
    blocks: [
      { kind: 'paragraph', look: 'plain', text: `${capital(standingWords(standing))}.`, at: [] },
      ...points('Over a limit or against a rule', over, context, 'over'),
      ...notKnown(gaps, context),
      ...points('Not judged by this version: a qualified person must judge it', notJudged, context),
      ...points('Figures at odds: the heavier one is used until they agree', atOdds, context),
      ...aside(setAside, context),
      ...points('For a person to decide', toDecide, context),
      ...points('Worth knowing', remarks, context),
      ...unstated(notStated),
    ],
  };
}

const columns: Table['columns'] = [{ title: 'Point' }, { title: 'Where' }, { title: 'Finding' }];

function points(caption: string, findings: readonly Finding[], context: Context, is?: Cell['is']): readonly Block[] {
  const rows = findings.map(({ message, slug, at }): Row => ({
    ...row([at], is ? { text: `Over: ${message}`, is } : message, { text: '', link: linkTo(context, at) }, slug), repeat: true,
  }));
  return rows.length ? [{ kind: 'table', caption, columns, rows }] : [];
}

function notKnown(gaps: readonly Gap[], context: Context): readonly Block[] {
  const rows = gaps.map(({ finding, causes, leaves }): Row => {
    const at = finding?.at ?? placeIn(causes[0]?.at);
    const text = `Not known: ${finding?.message ?? causes.map(({ what }) => what).join(' ')}`;
    return { ...row(at ? [at] : [], { text, is: 'not known' }, at ? { text: '', link: linkTo(context, at) } : '', names(leaves), finding?.slug ?? ''), repeat: true };
  });
  return rows.length ? [{
    kind: 'table', caption: 'Not known, and what stays open because of it',
    columns: [{ title: 'What is missing' }, { title: 'Where' }, { title: 'Leaves open' }, { title: 'Finding' }], rows,
  }] : [];
}

const shownNames = 8;

/** The figures by name; many of them as the first few and a count, since all of them say `not known` in their own place. */
function names(results: readonly Result[]): string {
  const all = results.map(({ subject, result, stage }) => [subject.name ? `${quoted(subject.name)}: ${result}` : result, ...(stage ? [`(${stage})`] : [])].join(' '));
  return all.length > shownNames ? `${all.slice(0, shownNames - 1).join('; ')}; and ${all.length - shownNames + 1} more` : all.join('; ');
}

function aside(findings: readonly Finding[], context: Context): readonly Block[] {
  const rows = findings.map(({ message, slug, at, waived }): Row => ({
    ...row([at], message, { text: '', link: linkTo(context, at) }, slug, waived?.reason ?? '', waived?.approvedBy ?? ''), repeat: true,
  }));
  return rows.length ? [{
    kind: 'table', caption: 'Set aside on a named person’s authority', columns: [...columns, { title: 'Reason given' }, { title: 'Approved by' }], rows,
  }] : [];
}

const unstated = (subjects: readonly string[]): readonly Block[] =>
  subjects.length ? [{ kind: 'paragraph', look: 'plain', text: `Not stated, so not checked: ${subjects.join('; ')}.`, at: [] }] : [];
