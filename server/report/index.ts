// Holds what is shown of a plan as a whole: its sheet in HTML, Markdown and lines, the JSON report, its content mark, how it stands, and what differs between two versions.
// Must never work out an engineering figure, change the plan, or know an editor, a file system or the clock.
// Read sheet/types.ts first, then sheet/index.ts and one section of it, then render/html.ts.
export { compare } from './compare/index.ts';
export type { PathOf } from './compare/said-tables.ts';
export type { Comparison } from './compare/types.ts';
export { contentMark } from './mark.ts';
export { folderOf, relativePath } from './paths.ts';
export { type Spot, spotOf } from './places.ts';
export {
  type ComparedPlan,
  comparedDocument,
  comparedMarkdown,
  comparedPlan,
  comparedText,
} from './render/compared.ts';
export { comparedJson } from './render/compared-json.ts';
export { type IdOf, type SectionHtml, sectionsHtml } from './render/html.ts';
export { json, type Report, report } from './render/json.ts';
export { lines } from './render/lines.ts';
export { markdown } from './render/markdown.ts';
export { page } from './render/page.ts';
export { visible } from './render/visible.ts';
export { type SheetOptions, sheetOf } from './sheet/index.ts';
export type { Sheet } from './sheet/types.ts';
export { countOpen, type Standing, standing, standingWords } from './standing.ts';
export { notStated } from './unstated.ts';
