/** Units are types: a plain number becomes a quantity only here, and a quantity of one unit is no quantity of another. */
declare const unit: unique symbol;
type Unit<N extends string> = number & { readonly [unit]: N };

/** Plane angle in degrees. */
export type Deg = Unit<'deg'>;
/** Time in milliseconds, on the one clock of a frame source. */
export type Ms = Unit<'ms'>;
/** Length in image pixels of the upright picture, x to the right, y down. */
export type Px = Unit<'px'>;
/** Dimensionless share, usually in [0, 1]. */
export type Ratio = Unit<'ratio'>;

export const deg = (x: number): Deg => x as Deg;
export const ms = (x: number): Ms => x as Ms;
export const px = (x: number): Px => x as Px;
export const ratio = (x: number): Ratio => x as Ratio;

/** Degrees of an angle given in radians. */
export const degOfRad = (rad: number): Deg => ((rad * 180) / Math.PI) as Deg;
/** Radians of an angle in degrees; radians live only within one expression. */
export const radOfDeg = (d: Deg): number => (d * Math.PI) / 180;

/** The same angle in [-180, 180), degrees. */
export const wrapped = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180;

/** The angle equal to `degrees` (mod 360) that lies nearest to `near`. */
export const unwrappedNear = (degrees: number, near: number): number => near + wrapped(degrees - near);
