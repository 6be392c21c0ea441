import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'

interface LaterProps<Props extends object> {
  /** Brings the part; asked again after a failure. */
  readonly load: () => Promise<ComponentType<Props>>
  readonly props: Props
  readonly waiting: string
  readonly failed: string
  readonly again: string
  /** Called once the part is on the screen. */
  readonly onHere: () => void
}

type Coming = 'waiting' | 'failed' | 'here'

/** A part of the screen whose script comes after the first paint. Should it not come, that is said and can be tried again. */
export function Later<Props extends object>({ load, props, waiting, failed, again, onHere }: LaterProps<Props>) {
  const [coming, setComing] = useState<Coming>(brought.has(load) ? 'here' : 'waiting')
  const [round, setRound] = useState(0)
  useEffect(() => {
    if (brought.has(load)) {
      onHere()
      return
    }
    let wanted = true
    load().then(Part => {
      brought.set(load, Part as ComponentType<never>)
      if (!wanted) return
      setComing('here')
      onHere()
    }, () => { if (wanted) setComing('failed') })
    return () => { wanted = false }
  }, [load, round])
  const Part = brought.get(load) as ComponentType<Props> | undefined
  if (coming === 'here' && Part !== undefined) return <Part {...props} />
  if (coming !== 'failed') return <p class="step">{waiting}</p>
  return <p class="step" role="status">{failed} <button type="button" class="quiet" onClick={() => { setComing('waiting'); setRound(round + 1) }}>{again}</button></p>
}

/** Parts that came once are drawn at once from then on. */
const brought = new Map<unknown, ComponentType<never>>()
