/** A fresh id for a set or an edit. The one place where ids are made. */
export const newId = (): string => crypto.randomUUID();
