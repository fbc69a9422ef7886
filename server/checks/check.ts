// Makes a check of its facts, severity, effect, words and ways out.
import type { ResultFacts } from '../results/types.ts';
import type { Check } from './types.ts';

/** The check as written; typed by its slug, so that its words can only use facts that the slug carries. */
export const check = <S extends keyof ResultFacts>(made: Check<S>): Check<S> => made;
