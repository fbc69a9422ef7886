// What the server says it can do, to a client that can do so much.
import { type ServerCapabilities, TextDocumentSyncKind } from 'vscode-languageserver';
import type { Announced } from './announced.ts';
import { actionKinds } from './features/acting.ts';
import { legend } from './features/tokens.ts';

/** The command for editors without a sheet of their own: writes the sheet as a page and shows it, or says where it lies. */
export const openSheet = 'becket.openSheet';

export function capabilitiesFor(announced: Announced): ServerCapabilities {
  const plans = [
    { scheme: 'file', pattern: { glob: '**/*.liftplan' } },
    { scheme: 'file', pattern: { glob: '**', matches: 'folder' as const } },
  ];
  return {
    positionEncoding: 'utf-16',
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
    hoverProvider: true,
    completionProvider: { triggerCharacters: [' ', '>', '"', '/'] },
    documentSymbolProvider: true,
    workspaceSymbolProvider: true,
    definitionProvider: true,
    referencesProvider: true,
    documentHighlightProvider: true,
    renameProvider: announced.prepareRename ? { prepareProvider: true } : true,
    foldingRangeProvider: true,
    selectionRangeProvider: true,
    documentLinkProvider: {},
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' },
    ...(!announced.ours && { executeCommandProvider: { commands: [openSheet] } }),
    ...(announced.actions && {
      codeActionProvider: { codeActionKinds: [...actionKinds], resolveProvider: announced.resolvedActions },
    }),
    ...(announced.hierarchies && { callHierarchyProvider: true, typeHierarchyProvider: true }),
    ...(announced.hints && { inlayHintProvider: true }),
    ...(announced.tokens && { semanticTokensProvider: { legend, full: { delta: true }, range: true } }),
    workspace: {
      ...(announced.folders && { workspaceFolders: { supported: true, changeNotifications: true } }),
      ...(announced.fileDeeds && { fileOperations: { willRename: { filters: plans } } }),
    },
  };
}
