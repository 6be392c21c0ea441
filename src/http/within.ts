/**
 * What some work brings, unless it takes longer than so many milliseconds: then this rejects, and the work goes on unheard.
 */
export async function within<Result>(work: Promise<Result>, mostMs: number): Promise<Result> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => { reject(new Error(`No answer within ${mostMs} ms.`)) }, mostMs)
  })
  try {
    return await Promise.race([work, late])
  } finally {
    clearTimeout(timer)
  }
}
