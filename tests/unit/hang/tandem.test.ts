// Shares of two plumb lines against the moment balance, level, tilted and through an upending.
import { describe, expect, test } from 'vitest';
import { plumbShares, upending } from '../../../server/mechanics/hang/index.ts';
import { close, degrees, gravity } from '../../support/rigs.ts';
import data from './rigs.json';

describe('two plumb lines', () => {
  test.each(data.shares)('$id (computed, two methods agree)', (row) => {
    if ('lever' in row) {
      const [a, b] = row.lever as [number, number];
      const shares = plumbShares({ weight: row.W!, a: [0, 0], b: [a + b, 0], cog: [a, 0] }, 0);
      if ('open' in shares) throw new Error(shares.open);
      close(shares.a / row.RA, 1, row.within);
      close(shares.b / row.RB, 1, row.within);
      return;
    }
    const weight = row.mass! * gravity;
    const load = {
      weight,
      a: row.a as [number, number],
      b: row.b as [number, number],
      cog: row.cog as [number, number],
    };
    const shares = plumbShares(load, row.tilt! * degrees);
    if ('open' in shares) throw new Error(shares.open);
    close(shares.a, row.RA, row.within * weight);
    close(shares.b, row.RB, row.within * weight);
    expect(shares.depth).toBeGreaterThan(0);
  });

  test('centre 3 m from one crane and 5 m from the other, level and 3° off (lever rule; 3° after 0027/ND §5.4)', () => {
    const load = { weight: 60000, a: [0, 0], b: [8, 0], cog: [3, -1.2] } as const;
    const rows: [number, number, number][] = [
      [0, 37500, 22500],
      [3, 37028, 22972],
      [-3, 37972, 22028],
    ];
    for (const [tilt, a, b] of rows) {
      const shares = plumbShares(load, tilt * degrees);
      if ('open' in shares) throw new Error(shares.open);
      close(shares.a, a, 0.5);
      close(shares.b, b, 0.5);
    }
  });

  test('upending a 100 t vessel: the top takes all of it in the end (moment balance)', () => {
    const load = { weight: 100, a: [0, 0], b: [20, -1.5], cog: [9, -1.5] } as const;
    const rows: [number, number][] = [
      [0, 45],
      [30, 47.28],
      [60, 51.32],
      [80, 61.41],
      [90, 100],
    ];
    for (const [tilt, top] of rows) {
      const shares = plumbShares(load, tilt * degrees);
      if ('open' in shares) throw new Error(shares.open);
      close(shares.b, top, 0.005);
      close(shares.a, 100 - top, 0.005);
    }
    const way = upending(load, 0, Math.PI / 2);
    close(way.worstB!.share, 100, 1e-9);
    close(way.worstB!.tilt, Math.PI / 2, 1e-12);
    close(way.worstA!.share, 55, 1e-9);
    expect(way.worstA!.tilt).toBe(0);
    expect(way.open).toEqual([]);
    const gaps = way.steps.slice(1).map((step, i) => step.tilt - way.steps[i]!.tilt);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(degrees * 1.0001);
  });

  test('a line that would have to push has no share, nor have lines that coincide', () => {
    expect(plumbShares({ weight: 1, a: [0, 0], b: [4, 0], cog: [5, -1] }, 0)).toEqual({ open: 'a-pushes' });
    expect(plumbShares({ weight: 1, a: [0, 0], b: [4, 0], cog: [-1, -1] }, 0)).toEqual({ open: 'b-pushes' });
    expect(plumbShares({ weight: 1, a: [0, 0], b: [4, 0], cog: [2, 0] }, Math.PI / 2)).toEqual({
      open: 'lines-coincide',
    });
    const above = plumbShares({ weight: 1, a: [0, 0], b: [4, 0], cog: [1, 0.5] }, 5 * degrees);
    if ('open' in above) throw new Error(above.open);
    expect(above.depth).toBeLessThan(0);
    // Centre over the line: the raised end takes less; under it, more.
    expect(above.b).toBeLessThan(0.25);
  });
});
