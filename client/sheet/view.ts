// The script inside the sheet's page: puts sections in, marks the row of the cursor, and tells the panel which row was chosen.
import type { FromPage, KeptState, ToPage } from './messages.ts';
import { readKept } from './messages.ts';
import { putSections } from './patch.ts';
import { Rows } from './rows.ts';

interface Host {
  postMessage(message: FromPage): void;
  getState(): unknown;
  setState(state: KeptState): void;
}
declare function acquireVsCodeApi(): Host;

const host = acquireVsCodeApi();
const element = (id: string) => document.getElementById(id) as HTMLElement;
const sheet = element('sheet');
const rows = new Rows(sheet, (id, go) => host.postMessage({ type: 'reveal', id, go }));
let kept: KeptState = readKept(host.getState()) ?? { uri: '', stay: false, paper: false };

const stateWords = {
  level: '',
  behind: 'This sheet is older than the text: it is being worked out again.',
  unsaved: 'This sheet is of an earlier text: it is worked out again when the plan is saved.',
  stopped: 'Becket has stopped. This sheet is of an earlier text; “Becket: Restart” begins anew.',
};

window.addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
  if (data.type === 'sheet') showSheet(data);
  else if (data.type === 'marks') rows.mark(data.ids);
  else if (data.type === 'state') showState(data.state);
});

function showSheet(message: Extract<ToPage, { type: 'sheet' }>): void {
  if (message.uri !== kept.uri) {
    sheet.replaceChildren();
    window.scrollTo(0, 0);
    keep({ uri: message.uri });
  }
  putSections(sheet, message.order, message.sections);
  rows.refresh();
  document.title = message.title;
  element('version').textContent = `Text version ${message.version}`;
}

function showState(state: keyof typeof stateWords): void {
  const said = stateWords[state];
  const line = element('state');
  if (line.textContent !== said) line.textContent = said;
  document.body.classList.toggle('behind', state !== 'level');
}

function keep(change: Partial<KeptState>): void {
  kept = { ...kept, ...change };
  host.setState(kept);
  document.body.classList.toggle('paper', kept.paper);
  element('paper').setAttribute('aria-pressed', String(kept.paper));
  element('stay').setAttribute('aria-pressed', String(kept.stay));
}

element('paper').addEventListener('click', () => keep({ paper: !kept.paper }));
element('stay').addEventListener('click', () => {
  keep({ stay: !kept.stay });
  host.postMessage({ type: 'stay', on: kept.stay });
});
element('print').addEventListener('click', () => host.postMessage({ type: 'print' }));
element('export').addEventListener('click', () => host.postMessage({ type: 'export' }));

keep({});
host.postMessage({ type: 'ready' });
