// What every section of the sheet is made from: the snapshot, its units, and how files are called for the reader.
import type { Item } from '../../plan/types.ts';
import type { System } from '../../quantities/index.ts';
import type { Place } from '../../syntax/types.ts';
import type { Snapshot } from '../../workspace/index.ts';
import { spotOf } from '../places.ts';
import type { SourceNames } from './source-names.ts';
import type { Block, Link, Section } from './types.ts';

export interface Context {
  readonly snapshot: Snapshot;
  readonly system: System;
  readonly mark: string;
  readonly sources: SourceNames;
  readonly pathOf: (file: string) => string;
  /** Paths of the plans that take this library in; empty for a plan. */
  readonly usedBy: readonly string[];
}

/** Top-level statements of one kind, of the plan's own file and of what it uses. */
export const statementsOf = ({ snapshot }: Context, keyword: string): readonly Item[] =>
  snapshot.plan.items.filter((item) => item.keyword === keyword);

/** A link to a place: the line, and the file where it is not the plan's own. */
export function linkTo({ snapshot, pathOf }: Context, at: Place): Link {
  const { file, line } = spotOf(snapshot.plan, at);
  return { path: file === snapshot.plan.file ? '' : pathOf(file), line };
}

/** A section, or none where nothing stands in it. */
export const section = (id: string, title: string, blocks: readonly Block[]): readonly Section[] =>
  blocks.length ? [{ id, title, blocks }] : [];
