// What the client says it can do, read once: nothing is sent to a client that has not announced it.
import type { InitializeParams } from 'vscode-languageserver-protocol';
import type { StartOptions } from './messages.ts';

export interface Announced {
  readonly related: boolean; // related places of a finding
  readonly markdown: boolean; // in hovers
  readonly completionMarkdown: boolean;
  readonly snippets: boolean;
  readonly symbolTree: boolean;
  readonly actions: boolean; // code actions as such, not as commands
  readonly preferredActions: boolean;
  readonly resolvedActions: boolean; // asks for the edit of an action once it is chosen
  readonly versionedEdits: boolean;
  readonly snippetEdits: boolean; // edits may say where the cursor goes
  readonly prepareRename: boolean;
  readonly hints: boolean;
  readonly refreshHints: boolean;
  readonly tokens: boolean;
  readonly refreshTokens: boolean;
  readonly configuration: boolean;
  readonly changedConfiguration: boolean; // may be registered for
  readonly folders: boolean;
  readonly watching: boolean;
  readonly fileDeeds: boolean; // tells of files renamed, and takes edits before
  readonly showDocument: boolean;
  readonly hierarchies: boolean;
  /** Our own client: it knows the messages of messages.ts. */
  readonly ours: boolean;
}

export function announcedBy({ capabilities, initializationOptions }: InitializeParams): Announced {
  const { textDocument: text = {}, workspace = {}, window = {} } = capabilities;
  return {
    related: text.publishDiagnostics?.relatedInformation === true,
    markdown: text.hover?.contentFormat?.[0] === 'markdown',
    completionMarkdown: text.completion?.completionItem?.documentationFormat?.includes('markdown') === true,
    snippets: text.completion?.completionItem?.snippetSupport === true,
    symbolTree: text.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    actions: text.codeAction?.codeActionLiteralSupport !== undefined,
    preferredActions: text.codeAction?.isPreferredSupport === true,
    resolvedActions:
      text.codeAction?.dataSupport === true && text.codeAction.resolveSupport?.properties.includes('edit') === true,
    snippetEdits:
      workspace.workspaceEdit?.documentChanges === true && workspace.workspaceEdit.snippetEditSupport === true,
    versionedEdits: workspace.workspaceEdit?.documentChanges === true,
    prepareRename: text.rename?.prepareSupport === true,
    hints: text.inlayHint !== undefined,
    refreshHints: workspace.inlayHint?.refreshSupport === true,
    tokens: text.semanticTokens !== undefined,
    refreshTokens: workspace.semanticTokens?.refreshSupport === true,
    configuration: workspace.configuration === true,
    changedConfiguration: workspace.didChangeConfiguration?.dynamicRegistration === true,
    folders: workspace.workspaceFolders === true,
    watching: workspace.didChangeWatchedFiles?.dynamicRegistration === true,
    fileDeeds: workspace.fileOperations?.willRename === true,
    showDocument: window.showDocument?.support === true,
    hierarchies: text.callHierarchy !== undefined,
    ours: isStartOptions(initializationOptions),
  };
}

const isStartOptions = (options: unknown): options is StartOptions =>
  typeof options === 'object' && options !== null && ('pages' in options || 'setAside' in options);

/** The start options, with only what has the right form. */
export function startOptions(options: unknown): StartOptions {
  if (!isStartOptions(options)) return {};
  const { pages, setAside } = options;
  return {
    ...(typeof pages === 'string' && { pages }),
    ...(Array.isArray(setAside) && { setAside: setAside.filter((uri) => typeof uri === 'string') }),
  };
}
