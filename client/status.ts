// The language status item: standing, gross load and how many plans are checked; or that the server has ended.
import { Disposable, type LanguageStatusItem, LanguageStatusSeverity, languages, window, workspace } from 'vscode';
import { STATUS, type StatusParams } from '../server/protocol/messages.ts';
import type { Server } from './server.ts';

export function showStatus(server: Server): Disposable {
  const known = new Map<string, StatusParams>();
  const item = languages.createLanguageStatusItem('becket.status', { language: 'liftplan' });
  item.name = 'Becket';
  let running = true;
  const show = () => {
    const uri = window.activeTextEditor?.document.uri.toString();
    if (running) showStanding(item, uri === undefined ? undefined : known.get(uri));
    else showEnded(item);
  };
  server.onTold<StatusParams>(STATUS, (status) => {
    known.set(status.uri, status);
    show();
  });
  show();
  return Disposable.from(
    item,
    server.onState((now) => {
      running = now;
      show();
    }),
    window.onDidChangeActiveTextEditor(show),
    workspace.onDidCloseTextDocument(({ uri }) => known.delete(uri.toString())),
  );
}

function showStanding(item: LanguageStatusItem, status: StatusParams | undefined): void {
  item.severity = LanguageStatusSeverity.Information;
  item.busy = status === undefined;
  item.text = status?.standing ?? 'Working the plan out';
  item.detail = status && detail(status);
  item.command = { title: 'Show Sheet Beside', command: 'becket.showSheet' };
}

function detail({ grossLoad, plansChecked, plansTotal }: StatusParams): string {
  const checked = `${plansChecked} of ${plansTotal} plans checked`;
  return grossLoad === null ? checked : `gross load ${grossLoad}, ${checked}`;
}

function showEnded(item: LanguageStatusItem): void {
  item.severity = LanguageStatusSeverity.Error;
  item.busy = false;
  item.text = 'Becket has stopped: nothing shown here is worked out any more';
  item.detail = undefined;
  item.command = { title: 'Restart', command: 'becket.restart' };
}
