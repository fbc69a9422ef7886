// Sine, cosine and tangent of an angle that has a tolerance.
import { none } from '../quantities/dimension.ts';
import type { Quantity } from '../quantities/quantity.ts';

/** sin, cos, tan with the ends of the angle's tolerance; null at a pole of tan. */
export function trigonometry(fn: string, angle: Quantity): Quantity | null {
  const f = fn === 'sin' ? Math.sin : fn === 'cos' ? Math.cos : Math.tan;
  const turning = fn === 'sin' ? Math.PI / 2 : 0; // first angle at which sin or cos turns back
  const values = [angle.low, angle.value, angle.high].map(f);
  if (fn === 'tan') {
    if (
      Math.abs(Math.cos(angle.value)) < 1e-12 ||
      Math.floor(angle.low / Math.PI + 0.5) !== Math.floor(angle.high / Math.PI + 0.5)
    )
      return null;
  } else if (angle.high - angle.low >= 2 * Math.PI) values.push(-1, 1);
  else
    for (let k = Math.ceil((angle.low - turning) / Math.PI); turning + k * Math.PI <= angle.high; k++)
      values.push(f(turning + k * Math.PI));
  return {
    value: f(angle.value),
    low: Math.min(...values),
    high: Math.max(...values),
    dimension: none,
    percent: false,
    bare: true,
  };
}
