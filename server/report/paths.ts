// Paths and addresses with `/`, as text: no file system is asked.

/** A file's path as seen from a folder: `../library/yard.liftplan`. Both are absolute paths or addresses of one kind. */
export function relativePath(folder: string, file: string): string {
  const [from, to] = [folder.replace(/\/+$/, '').split('/'), file.split('/')];
  let shared = 0;
  while (shared < from.length && shared < to.length - 1 && from[shared] === to[shared]) shared++;
  if (shared === 0) return file; // nothing in common: another drive, another kind of address
  return [...from.slice(shared).map(() => '..'), ...to.slice(shared)].join('/');
}

/** The folder a file lies in. */
export const folderOf = (file: string): string => file.slice(0, Math.max(file.lastIndexOf('/'), 0));

/** A path as seen from the plan's folder, as seen from a sheet that sees the plan at `plan`. */
export function beside(plan: string, path: string): string {
  const parts = plan.split('/').slice(0, -1);
  for (const part of path.split('/')) {
    if (part === '..' && parts.length && parts.at(-1) !== '..') parts.pop();
    else if (part !== '.') parts.push(part);
  }
  return parts.join('/');
}

/** A path as a relative address: nothing in it is a mark of Markdown or the end of an attribute. */
export const addressOf = (path: string): string =>
  path
    .split('/')
    .map((part) => encodeURIComponent(part).replace(/[()'!*]/g, (c) => `%${c.charCodeAt(0).toString(16)}`))
    .join('/');
