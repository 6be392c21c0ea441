/** Tells whether a reply may still be drawn: once that of a later request was drawn, earlier ones are old news. */
export interface NewestFirst {
  /** Called as a request goes out. What it returns is asked once, when the reply is here: true lets it be drawn. */
  ask(): () => boolean
  /** What is on its way now is overtaken, as by a change of one's own. */
  overtake(): void
}

/** Keeps the order of requests that may come back in another. A slow reply is dropped only where a later one came, so a busy stream never starves the screen. */
export function newestFirst(): NewestFirst {
  let asked = 0
  let drawn = 0
  return {
    ask() {
      asked += 1
      const mine = asked
      return () => {
        if (mine <= drawn) return false
        drawn = mine
        return true
      }
    },
    overtake() { drawn = asked },
  }
}
