/** Runs asynchronous jobs one after another, in the order they were given; a failed job does not stop the next. */
export function inTurn(): <Result>(job: () => Promise<Result>) => Promise<Result> {
  let last: Promise<unknown> = Promise.resolve();
  return (job) => {
    const result = last.then(job, job);
    last = result.catch(() => undefined);
    return result;
  };
}
