// Timber by its moisture: the weight of the dry wood and of the water in it, by the volume it has at that moisture.
import { formula } from './formula.ts';

/**
 * kg/m3; `basic` is the oven-dry weight by the green volume against that of `water` (kg/m3), `moisture` the weight of water
 * by that of the dry wood. Below 30 % wood shrinks: G / (1 - 0.265 a G), a = 1 - moisture / 0.3. USDA Wood Handbook, ch. 4.
 */
export const timberDensity = formula<'water' | 'basic' | 'moisture'>(
  'water * basic / (1 - 0.265 * max(0, 1 - moisture / 0.3) * basic) * (1 + moisture)',
  ({ water, basic, moisture }) =>
    ((water * basic) / (1 - 0.265 * Math.max(0, 1 - moisture / 0.3) * basic)) * (1 + moisture),
);

/** The most water that the pores of a wood can hold, by its dry weight; solid wood has a gravity of 1.54. USDA Wood Handbook, ch. 4. */
export const mostMoisture = formula<'basic'>('1 / basic - 1 / 1.54', ({ basic }) => 1 / basic - 1 / 1.54);
