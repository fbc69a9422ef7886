// Semantic tokens: the classes that reading gave to the words of each line, the same that the grammar of colours gives.
import { type SemanticTokens, type SemanticTokensDelta, SemanticTokensBuilder } from 'vscode-languageserver';
import type { TokenClass, Tree } from '../../syntax/types.ts';
import type { Session } from '../session.ts';

/** Standard classes only, so that every theme has a colour for them. */
const standard = {
  keyword: 'keyword',
  clause: 'property',
  name: 'variable',
  text: 'string',
  number: 'number',
  unit: 'type',
  operator: 'operator',
  comment: 'comment',
  word: 'enumMember',
} as const satisfies Record<TokenClass, string>;

export const tokenTypes: readonly string[] = Object.values(standard);
const indexOf = Object.fromEntries(Object.keys(standard).map((name, n) => [name, n])) as Record<TokenClass, number>;

export function answerTokens(session: Session): void {
  const { semanticTokens } = session.connection.languages;
  const builders = new Map<string, SemanticTokensBuilder>();
  const full = (uri: string, before?: string): SemanticTokens | SemanticTokensDelta => {
    const file = session.addresses.of(uri);
    const builder = builders.get(file) ?? new SemanticTokensBuilder();
    builders.delete(file);
    if (session.workspace.isOpen(file)) builders.set(file, builder);
    if (before !== undefined) builder.previousResult(before);
    else builder.previousResult('');
    push(builder, session.workspace.tree(file), 0, Number.POSITIVE_INFINITY);
    return before !== undefined ? builder.buildEdits() : builder.build();
  };
  semanticTokens.on(session.answer('colours', { data: [] }, ({ textDocument: { uri } }) => full(uri) as SemanticTokens));
  semanticTokens.onDelta(session.answer<Parameters<Parameters<typeof semanticTokens.onDelta>[0]>[0], SemanticTokens | SemanticTokensDelta>('colours', { data: [] }, ({ textDocument: { uri }, previousResultId }) => full(uri, previousResultId)));
  semanticTokens.onRange(session.answer('colours', { data: [] }, ({ textDocument: { uri }, range: { start, end } }) => {
    const builder = new SemanticTokensBuilder();
    push(builder, session.workspace.tree(session.addresses.of(uri)), start.line, end.line);
    return builder.build();
  }));
  session.onClose((file) => builders.delete(file));
}

function push(builder: SemanticTokensBuilder, tree: Tree | null, first: number, last: number): void {
  if (!tree) return;
  for (let row = first; row <= Math.min(last, tree.lines.length - 1); row++) {
    for (const { from, to, class: name } of tree.lines[row]?.colours ?? []) builder.push(row, from, to - from, indexOf[name], 0);
  }
}
