/**
 * Runs `call`, never twice at once: whoever asks while it runs has it run once more afterwards, however many ask.
 * @returns what comes when all that was asked for by then is done
 */
export function onceMore(call: () => Promise<void>): () => Promise<void> {
  let going: Promise<void> | null = null;
  let again = false;
  const round = async (): Promise<void> => {
    do {
      again = false;
      await call();
    } while (again);
  };
  return () => {
    if (going) again = true;
    going ??= round().finally(() => {
      going = null;
    });
    return going;
  };
}
