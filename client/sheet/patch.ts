// Puts changed sections into the page and leaves every node that stayed the same where it is: scroll, focus, selection and
// open details survive, since the nodes that hold them do.
import type { SheetSection } from '../../server/protocol/messages.ts';

/** Brings the sections under `root` to `order`; those in `changed` get their new content. */
export function putSections(root: HTMLElement, order: string[], changed: SheetSection[]): void {
  const parts = new Map([...root.children].map((part) => [part.id, part]));
  for (const [id, part] of parts) if (!order.includes(partId(id))) part.remove();
  const contents = new Map(changed.map((section) => [section.id, section.html]));
  order.forEach((id, at) => {
    const part = parts.get(`part-${id}`) ?? newPart(id);
    if (root.children[at] !== part) root.insertBefore(part, root.children[at] ?? null);
    const html = contents.get(id);
    if (html !== undefined) morphChildren(part, parse(html));
  });
}

const partId = (elementId: string) => elementId.replace(/^part-/, '');

function newPart(id: string): HTMLElement {
  const part = document.createElement('div');
  part.id = `part-${id}`;
  part.className = 'part';
  return part;
}

function parse(html: string): DocumentFragment {
  const template = document.createElement('template');
  template.innerHTML = html;
  return template.content;
}

/** Makes the children of `old` equal to those of `wanted`, keeping nodes that correspond by key or, without one, by order. */
function morphChildren(old: Element, wanted: ParentNode): void {
  const keyed = byKey(old.children);
  let at: ChildNode | null = old.firstChild;
  for (const next of [...wanted.childNodes]) {
    const match: ChildNode | null = counterpart(next, at, keyed);
    if (match === null) {
      old.insertBefore(next, at);
      continue;
    }
    if (match !== at) old.insertBefore(match, at);
    else at = at.nextSibling;
    morph(match, next);
  }
  while (at) {
    const rest: ChildNode | null = at.nextSibling;
    at.remove();
    at = rest;
  }
}

/** Each old element answers once, though several may show the same statement. */
function counterpart(next: ChildNode, at: ChildNode | null, keyed: Map<string, Element[]>): ChildNode | null {
  const name = next instanceof Element ? key(next) : '';
  if (name) {
    const same = keyed.get(name);
    const found = same?.find(({ nodeName }) => nodeName === next.nodeName);
    if (found) same?.splice(same.indexOf(found), 1);
    return found ?? null;
  }
  if (!at || at.nodeName !== next.nodeName) return null;
  return at instanceof Element && key(at) ? null : at;
}

function byKey(elements: Iterable<Element>): Map<string, Element[]> {
  const groups = new Map<string, Element[]>();
  for (const element of elements) groups.set(key(element), [...(groups.get(key(element)) ?? []), element]);
  return groups;
}

/** An element keeps its identity by its own id, else by the statement it shows. */
const key = (node: Element) => node.id || node.getAttribute('data-id') || '';

function morph(old: ChildNode, next: ChildNode): void {
  if (old instanceof Element && next instanceof Element) {
    morphAttributes(old, next);
    morphChildren(old, next);
  } else if (old.nodeValue !== next.nodeValue) old.nodeValue = next.nodeValue;
}

/** What the reader did to an element (opened it, reached it by key, marked it) is not the server's to change. */
const readersOwn = new Set(['open', 'tabindex']);

function morphAttributes(old: Element, next: Element): void {
  for (const { name } of [...old.attributes]) {
    if (!next.hasAttribute(name) && !readersOwn.has(name)) old.removeAttribute(name);
  }
  for (const { name, value } of [...next.attributes]) {
    if (readersOwn.has(name) || old.getAttribute(name) === value) continue;
    old.setAttribute(name, value);
  }
}
