/** Where the question is kept while the person is away to sign in; its name is one of those that deleting everything finds. */
export const QUESTION_KEY = 'evenside.sign-in';

/** What somebody brought back from signing in. */
export interface SignInReturn {
  readonly answer: URLSearchParams;
  /** The question as it was kept; null: this tab asked none. */
  readonly question: string | null;
}

let brought: SignInReturn | null = null;

function takeQuestion(): string | null {
  try {
    const kept = sessionStorage.getItem(QUESTION_KEY);
    sessionStorage.removeItem(QUESTION_KEY);
    return kept;
  } catch {
    return null;
  }
}

function placeOf(question: string | null): string {
  try {
    const { back } = JSON.parse(question ?? '') as { readonly back?: unknown };
    return typeof back === 'string' && back.startsWith('#/') ? back : '#/server';
  } catch {
    return '#/server';
  }
}

/**
 * Takes the answer of a sign-in out of the address before anything else sees it: it must not be there for a reload, a bookmark or a link.
 * @returns whether there was one
 */
export function noteReturn(): boolean {
  const answer = new URLSearchParams(location.search);
  if (!answer.has('code') && !answer.has('error')) return false;
  const question = takeQuestion();
  history.replaceState(null, '', `${location.pathname}${placeOf(question)}`);
  brought = { answer, question };
  return true;
}

/** What was brought, once. */
export function takeReturn(): SignInReturn | null {
  const found = brought;
  brought = null;
  return found;
}
