// The exit codes of every command.

export const exit = {
  /** Nothing found at or above the severity asked for; written; alike. */
  clean: 0,
  /** Findings, or a sheet or text that is not as it should be. */
  found: 1,
  /** Called in a way that cannot be done, or a file that cannot be read or written. */
  cannotRun: 2,
  /** An error in this program. */
  failed: 3,
} as const;
