// Shows a Markdown document of ours: rendered beside the text where the editor can, else as text.
import { commands, type Uri, window } from 'vscode';

export async function showMarkdown(page: Uri): Promise<void> {
  const canRender = (await commands.getCommands(true)).includes('markdown.showPreviewToSide');
  if (canRender) await commands.executeCommand('markdown.showPreviewToSide', page);
  else await window.showTextDocument(page, { preview: true });
}
