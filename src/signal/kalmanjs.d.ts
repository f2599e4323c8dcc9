declare module 'kalmanjs' {
  /** Scalar Kalman filter. Beware: R is the process noise and Q the measurement noise, the other way round than in textbooks. */
  export default class KalmanFilter {
    constructor(options?: { R?: number; Q?: number; A?: number; B?: number; C?: number });
    x: number;
    cov: number;
    /** Predicts with the control input `u`, corrects with the measurement `z`, returns the new estimate. */
    filter(z: number, u?: number): number;
    /** The prediction for the control input `u`, without a measurement. */
    predict(u?: number): number;
    uncertainty(): number;
  }
}
