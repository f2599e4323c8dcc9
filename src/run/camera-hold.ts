/** The camera is watched by a set of another page of this browser, which would count the same movements. */
export interface CameraElsewhere {
  readonly kind: 'camera-other-tab';
}

/** Sets of this page, and of others, on one camera. */
export interface CameraHold {
  /**
   * Keeps a camera for a set of this page. A page's own next set may begin while its last one is still being measured.
   * @param deviceId null: the browser's first one
   * @returns its end; null: a set of another page has it
   */
  readonly hold: (deviceId: string | null) => Promise<(() => void) | null>;
}

/** @param locks null: this browser can't tell, and no camera is refused */
export function cameraHold(locks: Pick<LockManager, 'request'> | null): CameraHold {
  /** By camera, how many sets of this page hold it, and what lets it go. */
  const holds = new Map<string, { sets: number; readonly letGo: () => void }>();
  const take = (name: string): Promise<(() => void) | null> =>
    new Promise((resolve) => {
      const whileHeld = (lock: Lock | null): Promise<void> | null => {
        if (!lock) {
          resolve(null);
          return null;
        }
        return new Promise((letGo) => resolve(letGo));
      };
      // A browser that refuses the lock itself can't tell either.
      locks?.request(name, { ifAvailable: true }, whileHeld).catch(() => resolve(() => undefined));
    });
  return {
    async hold(deviceId) {
      if (!locks) return () => undefined;
      const name = `evenside-camera-${deviceId ?? ''}`;
      if (!holds.has(name)) {
        const letGo = await take(name);
        if (!letGo) return null;
        holds.set(name, { sets: 0, letGo });
      }
      const held = holds.get(name);
      if (!held) throw new Error(`hold requires a camera that is held, got ${name}`);
      held.sets += 1;
      let over = false;
      return () => {
        if (over) return;
        over = true;
        held.sets -= 1;
        if (held.sets > 0) return;
        holds.delete(name);
        held.letGo();
      };
    },
  };
}
