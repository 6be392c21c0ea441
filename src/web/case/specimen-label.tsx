import type { CaseView } from '../../../shared/index.js'
import { dayInWords } from '../wording/day.js'
import { useSpoken } from '../wording/language.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { Told } from './told.js'

interface SpecimenLabelProps {
  readonly view: CaseView
  readonly districtName: string | null
  /** Given when the plant may be changed now. */
  readonly onChange?: (() => void) | undefined
  /** Where the plant is changed, on a page without script. */
  readonly changeAddress?: string | undefined
  /** The key that does the same, shown beside the words. */
  readonly changeKey?: string
}

/** The label of the sheet, as on a pressed plant: what it is, what ails it, where and when. */
export function SpecimenLabel({ view, districtName, onChange, changeAddress, changeKey }: SpecimenLabelProps) {
  const words = useSheetWording().label
  const { language } = useSpoken()
  const settled = view.place.host !== null
  const isJob = view.place.host?.job === true
  return (
    <section class="label" aria-label={words.title}>
      <dl>
        <div><dt>{isJob ? words.job : words.plant}</dt><dd class={settled ? 'written plant' : 'unknown'}>{view.place.host === null ? words.notYet : <Told text={view.place.host.name} />}</dd></div>
        {settled && <div><dt>{isJob ? words.question : words.trouble}</dt><dd class="written">{view.place.complaint === null ? words.fromTheTop : <Told text={view.place.complaint} />}</dd></div>}
        {districtName !== null && <div><dt>{words.place}</dt><dd class="written"><Told text={districtName} /></dd></div>}
        <div><dt>{words.date}</dt><dd class="written">{dayInWords(view.askedOn, language)}</dd></div>
      </dl>
      {settled && changeAddress !== undefined && <p><a href={changeAddress} aria-label={words.changePlant}>{words.change}</a></p>}
      {settled && onChange !== undefined && (
        <button type="button" class="quiet" onClick={onChange} aria-label={words.changePlant}>
          {words.change}{changeKey !== undefined && <kbd>{changeKey}</kbd>}
        </button>
      )}
    </section>
  )
}
