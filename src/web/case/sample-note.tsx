import type { CheckCard } from '../../../shared/index.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { Told } from './told.js'

/** What only a laboratory can tell, and how to send it something to look at. Its check asks the specialist, not the asker, what was found. */
export function SampleNote({ sample }: { readonly sample: CheckCard | null }) {
  const words = useSheetWording().sample
  if (sample === null) return null
  return (
    <section class="sample" aria-labelledby="sample-title">
      <h4 id="sample-title">{words.title}</h4>
      <p><Told text={sample.why} /></p>
      <dl class="looking"><div><dt>{words.pack}</dt><dd><Told text={sample.how} /></dd></div></dl>
    </section>
  )
}
