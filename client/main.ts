// The extension's way in, one file for both of its hosts: Node, or a web worker, which alone has `importScripts`.
import type { ExtensionContext } from 'vscode';
import type { Exports } from './activate.ts';

export async function activate(context: ExtensionContext): Promise<Exports> {
  const host = 'importScripts' in globalThis ? await import('./browser.ts') : await import('./node.ts');
  return host.activate(context);
}
