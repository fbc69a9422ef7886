// Two texts line by line: what went and what came, for a reader of a terminal.

/** Lines with `- ` (only in the old text) or `+ ` (only in the new one) before them, in order; empty where both are alike. */
export function difference(old: string, now: string): readonly string[] {
  const [a, b] = [old.split('\n'), now.split('\n')];
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) start++;
  let end = 0;
  while (end < a.length - start && end < b.length - start && a[a.length - 1 - end] === b[b.length - 1 - end]) end++;
  return middle(a.slice(start, a.length - end), b.slice(start, b.length - end));
}

const most = 4_000_000; // cells of the table below: some 2,000 changed lines on each side

/** By the longest run of lines that both have, in order; texts too far apart are shown as all gone and all new. */
function middle(a: readonly string[], b: readonly string[]): readonly string[] {
  if (a.length * b.length > most) return [...a.map((line) => `- ${line}`), ...b.map((line) => `+ ${line}`)];
  const width = b.length + 1;
  const lengths = new Uint32Array((a.length + 1) * width);
  const at = (i: number, j: number) => lengths[i * width + j] ?? 0;
  for (let i = a.length - 1; i >= 0; i--) {
    for (let j = b.length - 1; j >= 0; j--)
      lengths[i * width + j] = a[i] === b[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
  }
  const lines: string[] = [];
  for (let i = 0, j = 0; i < a.length || j < b.length; ) {
    if (i < a.length && j < b.length && a[i] === b[j]) [i, j] = [i + 1, j + 1];
    else if (i < a.length && (j >= b.length || at(i + 1, j) >= at(i, j + 1))) lines.push(`- ${a[i++]}`);
    else lines.push(`+ ${b[j++]}`);
  }
  return lines;
}
