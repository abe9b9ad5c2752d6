// Slows a stream of hints down, so that a page asks again every few seconds and not for each of many readings.

/** Runs `act` at once, then at most once per `periodMs`. What is asked for in between is done once, when the period is over. */
export function paced(act: () => void, periodMs: number): () => void {
  let isResting = false;
  let isWanted = false;
  const rest = () => {
    isResting = false;
    if (!isWanted) return;
    isWanted = false;
    run();
  };
  const run = () => {
    isResting = true;
    setTimeout(rest, periodMs);
    act();
  };
  return () => {
    if (isResting) isWanted = true;
    else run();
  };
}
