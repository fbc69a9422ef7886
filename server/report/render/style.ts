// The style sheets of the page that stands alone, as one element; fixed text of ours, nothing of a plan goes into it.
import { Html } from './escape.ts';
import sheetStyle from './sheet.css?raw';

export const style = (pageStyle: string, paper: 'A4' | 'Letter'): Html =>
  new Html(`<style>\n${[sheetStyle, pageStyle, `@page { size: ${paper}; }`].map(short).join('\n')}\n</style>`);

/** Without comments and indentation: the file is read by browsers. */
const short = (css: string) =>
  css
    .replace(/\/\*[^]*?\*\//g, '')
    .replace(/^\s+/gm, '')
    .trim();
