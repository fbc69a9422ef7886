// Semantic tokens: the classes that reading gave to the words of each line, and what only the whole plan knows of a name.
import { type SemanticTokens, SemanticTokensBuilder, type SemanticTokensDelta } from 'vscode-languageserver';
import { type tokenModifiers, tokens, tokenTypes } from '../../editor/tokens.ts';
import type { Snapshot } from '../../workspace/index.ts';
import type { Session } from '../session.ts';

/** A modifier of ours has no colour of its own in any theme; where it stands it says the same as a standard one. */
const modifiers = ['declaration', 'unknown', 'unused'] as const satisfies typeof tokenModifiers;
export const legend = { tokenTypes: Object.values(tokenTypes), tokenModifiers: [...modifiers] };
const typeIndex: ReadonlyMap<string, number> = new Map(legend.tokenTypes.map((name, n) => [name, n]));

export function answerTokens(session: Session): void {
  const { semanticTokens } = session.connection.languages;
  const builders = new Map<string, SemanticTokensBuilder>();
  /** The same builder from answer to answer, so that it knows the one before. */
  const builderOf = (file: string): SemanticTokensBuilder => {
    const builder = builders.get(file) ?? new SemanticTokensBuilder();
    if (session.workspace.isOpen(file)) builders.set(file, builder);
    return builder;
  };
  semanticTokens.on(
    session.answerAt<Asked, SemanticTokens>('colours', { data: [] }, (snapshot) => {
      const builder = builderOf(snapshot.file);
      builder.previousResult('');
      push(builder, snapshot, 0, snapshot.tree.rows.length - 1);
      return builder.build();
    }),
  );
  semanticTokens.onDelta(
    session.answerAt<Asked & { readonly previousResultId: string }, SemanticTokens | SemanticTokensDelta>(
      'colours',
      { data: [] },
      (snapshot, { previousResultId }) => {
        const builder = builderOf(snapshot.file);
        builder.previousResult(previousResultId);
        push(builder, snapshot, 0, snapshot.tree.rows.length - 1);
        return builder.buildEdits();
      },
    ),
  );
  semanticTokens.onRange(
    session.answerAt('colours', { data: [] }, (snapshot, { range: { start, end } }) => {
      const builder = new SemanticTokensBuilder();
      push(builder, snapshot, start.line, end.line);
      return builder.build();
    }),
  );
  session.onClose((file) => builders.delete(file));
}

interface Asked {
  readonly textDocument: { readonly uri: string };
}

function push(builder: SemanticTokensBuilder, snapshot: Snapshot, first: number, last: number): void {
  for (const { row, from, to, type, modifiers: said } of tokens(snapshot, first, last)) {
    const bits = said.reduce((sum, name) => sum | (1 << modifiers.indexOf(name)), 0);
    builder.push(row, from, to - from, typeIndex.get(type) ?? 0, bits);
  }
}
