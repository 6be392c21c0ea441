import type { LayWordsDraft } from './drafts.js'
import type { LayWords } from './guide.js'

/** The lay words of one language; none for a language without a file of them. */
export function buildLayWords(draft: LayWordsDraft | null): LayWords {
  return {
    alike: (draft?.alike ?? []).map(values), otherPlants: values(draft?.otherPlants ?? []), things: values(draft?.things ?? []),
    grounds: values(draft?.grounds ?? []), errands: values(draft?.errands ?? []),
    kinds: new Map([...(draft?.kinds ?? [])].map(([name, words]) => [name, values(words)])),
  }
}

function values(located: readonly { readonly value: string }[]): string[] {
  return located.map(({ value }) => value)
}
