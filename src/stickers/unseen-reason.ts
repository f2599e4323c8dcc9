/**
 * Why a sticker that is followed was not measured in a frame.
 * `glare`: a white highlight lies over much of it. `like-surround`: what lies beside it has its colour, so that its edge is not seen. `covered`: something lies over it, or
 * over a part of it. `lost`: out of sight for so long that its place is not known, and nothing above says why.
 */
export type UnseenReason = 'glare' | 'like-surround' | 'covered' | 'lost';
