/** Comes after all that the page has to do by now, so that it paints and hears between two slices of work. A timer would do so once a second in a hidden tab. */
export const nextTurn = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
