// `becket help`: what each command does, its options and exit codes.
import { cautions } from '../checks/index.ts';

export const help = `becket: lift plans as text.
${cautions.help}

  becket check PATH...            Says what in plans and libraries cannot be relied on, is over a limit, or needs a person.
      --severity WORD             error, warning or note: exit code 1 from there on (error unless said)
      --color WORD                auto, always or never; NO_COLOR is heeded
  becket report PATH...           Writes what plans come to.
      --format WORD               markdown, html, json or lines (by the name of the output, else markdown)
      --output FILE|FOLDER        instead of the output; a folder takes one file a plan, as the plans lie in the folder given
      --verify                    compares with the sheets kept beside the plans (skid.sheet.md beside skid.liftplan) or in --output
      --watch                     writes again whenever a file changes
  becket compare OLD NEW          Says what differs in meaning between two files, or two folders.
  becket compare --since REVISION PATH...
                                  The same between a revision of the git repository and what is on disk.
      --until REVISION            another revision instead of what is on disk
      --format WORD               text, markdown (fit for a comment on a change) or json
  becket format PATH...           Sets plans in order: indentation, spaces, colons; never a word or a figure.
      --verify                    changes nothing, names what it would change
  becket explain FINDING          Tells what a finding means and what to do about it.
  becket server --stdio           Serves an editor.
  becket help, becket version

PATH is a plan, a folder with all plans below it, or - for standard input; --named PATH says where that would lie.
Only files in the repository of what is named are read; without one, those in the folder you are in.

Exit codes: 0 nothing found, or done; 1 findings at or above the severity, or --verify or compare found a difference;
2 could not run; 3 an error in this program.
`;
