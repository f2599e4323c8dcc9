/** The same angle in [-180, 180), degrees. */
export const wrapped = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;

/** The angle equal to `degrees` (mod 360) that lies nearest to `near`. */
export const unwrappedNear = (degrees: number, near: number): number => near + wrapped(degrees - near);
