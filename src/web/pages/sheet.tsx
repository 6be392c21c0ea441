import { render } from 'preact'
import { useEffect, useLayoutEffect, useState } from 'preact/hooks'
import type { RegionView } from '../../../shared/index.js'
import { useSession } from '../case/use-session.js'
import { CallSheet } from '../sheet/call-sheet.js'
import type { KeyAction } from '../sheet/keys.js'
import { blankCall, keepDesk, MOST_CALLS, takeUpCalls, type CallDesk, type OpenCall } from '../sheet/open-calls.js'
import { practisedBefore, rememberPractised } from '../sheet/practised.js'
import { createStaffService } from '../wire/staff-service.js'
import { StaffFrame } from './staff-frame.js'
import './page.css'
import './sheet.css'

const service = createStaffService()

function SheetPage({ region }: { readonly region: RegionView | null }) {
  const [desk, setDesk] = useState<CallDesk | null>(null)
  const [said, setSaid] = useState('')
  const [ending, setEnding] = useState(false)
  useEffect(() => { void takeUpCalls(service).then(setDesk) }, [])
  // At once: a page left in the very moment a call was taken must still know it when it comes back.
  useLayoutEffect(() => { if (desk !== null) keepDesk(desk) }, [desk])
  if (desk === null) return <p>Fetching your calls …</p>
  const { calls, current } = desk

  // An E that was pressed once and left must not end the call minutes later.
  const forgetSaid = () => { setEnding(false); setSaid('') }
  const turnTo = (call: OpenCall) => { forgetSaid(); setDesk({ calls, current: call }) }

  function newCall(): void {
    if (calls.length >= MOST_CALLS) {
      setSaid('Two calls are open. End one before you take another.')
      return
    }
    const call = blankCall(service, calls)
    setEnding(false)
    setSaid('')
    setDesk({ calls: [...calls, call].sort((one, other) => one.number - other.number), current: call })
  }

  // The first press only asks: ending a call with a slip of the finger would lose a caller.
  async function endCall(): Promise<void> {
    if (!ending) {
      setEnding(true)
      setSaid(`Press E again to end call ${current.number}.`)
      return
    }
    setEnding(false)
    const { view } = current.session.state()
    if (view !== null) {
      const reply = await service.closeCall(view.link)
      if (!reply.ok) {
        setSaid('The call could not be ended just now. Please try again.')
        return
      }
    }
    current.session.pause()
    const rest = calls.filter(call => call !== current)
    const next = rest[0] ?? blankCall(service, rest)
    setSaid(`Call ${current.number} is ended.`)
    setDesk({ calls: rest.length === 0 ? [next] : rest, current: next })
  }

  // A practice call takes the place of the one before it, or of a blank sheet; a caller in hand is never put aside for it.
  async function practise(): Promise<void> {
    const { view } = current.session.state()
    const isSpare = view === null ? current.draft.trim() === '' : view.practice !== null
    if (!isSpare && calls.length >= MOST_CALLS) {
      setSaid('Two calls are open. End one before you practise.')
      return
    }
    const reply = await service.nextPractice(practisedBefore())
    if (!reply.ok) {
      setSaid('No practice call could be fetched just now. Please try again.')
      return
    }
    if (isSpare && view !== null) void service.closeCall(view.link)
    if (isSpare) current.session.pause()
    const rest = isSpare ? calls.filter(call => call !== current) : calls
    const call = blankCall(service, rest, '', reply.value)
    rememberPractised(reply.value)
    setEnding(false)
    setSaid('')
    setDesk({ calls: [...rest, call].sort((one, other) => one.number - other.number), current: call })
  }

  const others = calls.filter(call => call !== current)
  const deskActions: KeyAction[] = []
  const [other] = [...others.filter(call => call.number > current.number), ...others]
  if (other !== undefined) deskActions.push({ key: 'O', words: 'Other call', run: () => turnTo(other) })
  deskActions.push({ key: 'N', words: 'New call', run: newCall })
  deskActions.push({ key: 'T', words: 'Train on a past case', run: () => void practise() })
  deskActions.push({ key: 'E', words: ending ? 'End this call: press again' : 'End this call', run: () => void endCall() })

  return (
    <>
      <nav class="call-tabs" aria-label="Open calls" data-keys>
        {calls.map(call => <CallTab key={call.number} call={call} current={call === current} onTurn={() => turnTo(call)} />)}
      </nav>
      <p class="said" role="status">{said}</p>
      <CallSheet
        key={`${current.number}/${current.practice?.practice ?? ''}`} call={current} service={service} region={region} deskActions={deskActions}
        onDraft={words => { current.draft = words; keepDesk(desk); forgetSaid() }}
        onWork={forgetSaid}
      />
    </>
  )
}

function CallTab({ call, current, onTurn }: { readonly call: OpenCall, readonly current: boolean, readonly onTurn: () => void }) {
  const { view } = useSession(call.session)
  const about = view === null ? (!current && call.draft.trim()) || 'blank sheet' : view.place.host?.name ?? view.words[0] ?? ''
  return (
    <button type="button" class="call-tab" aria-current={current ? 'true' : undefined} onClick={onTurn}>
      <b>{call.practice !== null || view?.practice != null ? 'Practice' : `Call ${call.number}`}</b> <span>{about.length > 28 ? `${about.slice(0, 27)}…` : about}</span> {!current && <kbd>O</kbd>}
    </button>
  )
}

const page = document.querySelector('#page')
if (page !== null) {
  render(
    <StaffFrame service={service} title="Call sheet" here="/sheet" roles={['volunteer', 'specialist', 'administrator']}>
      {(_person, region) => <SheetPage region={region} />}
    </StaffFrame>, page)
}
