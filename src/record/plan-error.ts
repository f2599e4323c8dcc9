/** Why a text is no plan that can be taken on. */
export type PlanError =
  /** Something else: another kind of file, or other JSON. */
  | { readonly kind: 'not-a-plan' }
  /** A plan that was cut or changed on its way; `how` says where that showed. */
  | {
      readonly kind: 'plan-damaged';
      readonly how: 'cut-short' | 'not-base64url' | 'checksum' | 'not-deflate' | 'not-utf8' | 'not-json';
    }
  /** Of a newer version of the program. */
  | { readonly kind: 'plan-newer'; readonly version: number; readonly known: number }
  /** The first thing wrong: `where` as in `plan.items[0].restS`, and `what` is wrong there. */
  | { readonly kind: 'plan-wrong'; readonly where: string; readonly what: string }
  /** More than any plan needs, before or after inflating; `found` is a lower bound where reading stopped at the limit. */
  | { readonly kind: 'plan-too-large'; readonly what: PlanLimit; readonly found: number; readonly limit: number };

export type PlanLimit = keyof typeof PLAN_LIMITS;

/** Chosen: a plan with a line for each exercise is a file of 8,500 characters, a code of 420, 7 levels deep. */
export const PLAN_LIMITS = { fileCharacters: 200_000, codeCharacters: 16_000, inflatedBytes: 200_000, levels: 12 } as const;
