// Paths of files as `use` writes them: relative, with `/`.

/** A path seen from a folder, with `.` and `..` worked off; both without a `/` at the end. Null where it would leave the top. */
export function joined(folder: string, path: string): string | null {
  const parts = folder === '' ? [] : folder.split('/');
  for (const part of path.split('/')) {
    if (part === '' || part === '.') continue;
    if (part !== '..') parts.push(part);
    else if (parts.pop() === undefined) return null;
  }
  return parts.join('/');
}

/** Why a path cannot be meant as one relative to its file; null where it can. */
export function notRelative(path: string): string | null {
  if (path === '' || path.startsWith('/') || /^[A-Za-z][A-Za-z0-9+.-]*:/.test(path))
    return 'it is not a path relative to this file';
  return path.includes('\\') ? 'folders in a path are parted by /' : null;
}
