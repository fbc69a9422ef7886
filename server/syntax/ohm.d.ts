// What is used of Ohm, typed here because its own types leave out recipes, failures and the second entry.
declare module 'ohm-js' {
  export interface Failure {
    isFluffy(): boolean;
    toString(): string;
  }
  export interface MatchResult {
    succeeded(): boolean;
    getRightmostFailurePosition(): number;
    getRightmostFailures(): Failure[];
  }
  export interface Grammar {
    match(input: string, startRule: string): MatchResult;
  }
  export function makeRecipe(recipe: string): Grammar;
  export function grammars(source: string): Readonly<Record<string, Grammar>>;
}

declare module 'ohm-js/v18' {
  import type { MatchResult } from 'ohm-js';

  export interface CstNode {
    readonly ctorName: string;
    readonly source: { readonly startIdx: number; readonly endIdx: number };
    readonly children: readonly CstNode[];
    isNonterminal(): boolean;
  }
  export function getCstRoot(result: MatchResult): CstNode;
}
