import type { Ref } from 'preact'
import { useState } from 'preact/hooks'
import type { OpenCase, RegionView } from '../../../shared/index.js'
import { LONGEST_WORDS } from './longest-words.js'
import { useSpoken } from '../wording/language.js'

interface QuestionBoxProps {
  readonly region: RegionView | null
  /** District to begin with; one the region does not have counts as none. */
  readonly district: string | null
  readonly sending: boolean
  /** Given when the words asked before are outside of what can be answered: they are kept to be changed. */
  readonly again?: { readonly words: string, readonly headingRef: Ref<HTMLHeadingElement> }
  readonly onOpen: (body: OpenCase) => void
}

/** The empty sheet: the question in the asker's own words, and the district if they like. */
export function QuestionBox({ region, district, sending, again, onOpen }: QuestionBoxProps) {
  const { language, wording: { question: words, notAsked } } = useSpoken()
  const [typed, setTyped] = useState(again?.words ?? '')
  const [chosen, setChosen] = useState<string | null>(null)
  const [fault, setFault] = useState<string | null>(null)
  const districts = region?.districts ?? []
  const here = chosen ?? (districts.some(row => row.district === district) ? district : null) ?? ''

  function submit(event: Event): void {
    event.preventDefault()
    const said = typed.trim()
    const found = said === '' ? words.empty : said.length > LONGEST_WORDS ? words.tooLong(LONGEST_WORDS) : null
    setFault(found)
    if (found !== null) return
    onOpen({ words: said, language, ...(here === '' ? {} : { district: here }) })
  }

  return (
    <form class="step question" noValidate onSubmit={submit}>
      <h3 class="step-title" id="question-title" tabIndex={-1} ref={again?.headingRef ?? null}>{again === undefined ? words.title : notAsked.title}</h3>
      <p id="question-lead">{again === undefined ? words.lead : notAsked.lead}</p>
      {again !== undefined && <p>{notAsked.kept}</p>}
      <label class="hush" for="question-words">{words.label}</label>
      <textarea
        id="question-words" class="ruled" rows={4} value={typed}
        aria-describedby={fault === null ? 'question-lead' : 'question-fault question-lead'} aria-invalid={fault !== null}
        onInput={event => setTyped(event.currentTarget.value)}
      />
      {fault !== null && <p class="fault" id="question-fault" role="alert">{fault}</p>}
      <div class="examples">
        <h4>{words.examplesTitle}</h4>
        <ul>{words.examples.map(example => (
          <li key={example}><button type="button" class="quiet" onClick={() => setTyped(example)}>{example}</button></li>
        ))}</ul>
      </div>
      {districts.length > 0 && (
        <div class="field short">
          <label for="question-district">{words.district}</label>
          <select id="question-district" value={here} onChange={event => setChosen(event.currentTarget.value)}>
            <option value="">{words.anyDistrict}</option>
            {districts.map(row => <option key={row.district} value={row.district}>{row.name}</option>)}
          </select>
        </div>
      )}
      <p class="row">
        <button type="submit" class="main" disabled={sending}>{sending ? words.sending : again === undefined ? words.submit : notAsked.submit}</button>
        <span class="hint">{words.privacy}</span>
      </p>
    </form>
  )
}
