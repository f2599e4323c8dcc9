/** Messages outside of the page. */
export interface MessageServices {
  readonly state: () => NotificationPermission | 'unsupported';
  /** Asks the person, through the browser. To be called from a click. */
  readonly ask: () => Promise<NotificationPermission | 'unsupported'>;
  /** Silent where they are not allowed. */
  readonly show: (text: string) => void;
}
