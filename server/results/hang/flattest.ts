// How flat a run lies.
import type { Placed } from '../../mechanics/hang/index.ts';
import type { Built } from './model.ts';

/** The flattest part of a run, at one node if one is given, from horizontal, rad; what lies straight along a body is no part that hangs. */
export function flattest(
  built: Built,
  rest: Pick<Placed, 'slings'>,
  s: number,
  at: { readonly body: number; readonly point: number } | null = null,
): number | null {
  const path = built.model.slings[s]?.path ?? [];
  const body = (i: number): number | null => {
    const node = path[i];
    return node && 'body' in node ? node.body : null;
  };
  const here = (i: number): boolean => {
    const node = path[i];
    return !at || (node !== undefined && 'body' in node && node.body === at.body && node.point === at.point);
  };
  const angles = (rest.slings[s]?.parts ?? []).flatMap((part, i) =>
    (body(i) !== null && body(i) === body(i + 1)) || !(here(i) || here(i + 1)) ? [] : [part.angle],
  );
  return angles.length ? Math.min(...angles) : null;
}
