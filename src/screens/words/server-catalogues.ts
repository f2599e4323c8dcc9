import { enServer } from './en-server.ts';
import { esServer } from './es-server.ts';
import type { Language } from './languages.ts';
import type { ServerWords } from './server-words.ts';
import { useCatalogue } from './use-catalogue.ts';

/** The words of the screen of the clinic's server, in every language; loaded with it. */
export const SERVER_CATALOGUES: Readonly<Record<Language, ServerWords>> = { en: enServer, es: esServer };

/** The words in the language of the other screens. */
export const useServerWords = (): ServerWords => useCatalogue(SERVER_CATALOGUES);
