import { LONGEST_WORDS } from '../case/longest-words.js'
import { useWording } from '../wording/language.js'
import { usePlainWording } from '../wording/plain-language.js'
import type { OpeningPage } from './page.js'
import { PlainField } from './plain-form.js'

/** The empty sheet: the question in the asker's own words, and the way back to a sheet begun before. */
export function PlainOpening({ region, language, openingKey, typed, fault, gone }: OpeningPage) {
  const { question: words, trouble } = useWording()
  const plain = usePlainWording()
  const here = typed['district'] ?? ''
  return (
    <>
      {gone && <div class="trouble" role="status"><p>{trouble.gone}</p></div>}
      {fault !== null && fault.field === null && <div class="trouble" role="alert"><p>{fault.words}</p></div>}
      <form class="step question" method="post" action="/ask">
        <input type="hidden" name="key" value={openingKey} />
        <input type="hidden" name="language" value={language} />
        <h2 class="step-title">{words.title}</h2>
        <p>{words.lead}</p>
        <PlainField name="words" label={words.label} rows={4} ruled longest={LONGEST_WORDS} value={typed['words'] ?? ''} fault={fault} />
        <div class="examples"><h3>{words.examplesTitle}</h3><ul>{words.examples.map(example => <li key={example}>{example}</li>)}</ul></div>
        {region.districts.length > 0 && (
          <div class="field short">
            <label for="district">{words.district}</label>
            <select id="district" name="district">
              <option value="">{words.anyDistrict}</option>
              {region.districts.map(row => <option key={row.district} value={row.district} selected={row.district === here}>{row.name}</option>)}
            </select>
          </div>
        )}
        <p class="row"><button type="submit" class="main">{words.submit}</button> <span class="hint">{words.privacy}</span></p>
        <p class="hint">{plain.lead}</p>
      </form>
      <form class="step find" method="post" action="/ask/find">
        <input type="hidden" name="language" value={language} />
        <h2 class="step-title">{plain.found.title}</h2>
        <PlainField name="link" label={plain.found.label} longest={400} value={typed['link'] ?? ''} fault={fault} />
        <p><button type="submit" class="second">{plain.found.submit}</button></p>
      </form>
    </>
  )
}
