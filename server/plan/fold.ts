// How names are compared: differing only in case or spaces they are the same.

/** The form of a name that equal names share. */
export const fold = (name: string): string => name.normalize('NFC').toLowerCase().replace(/\s+/g, '');
