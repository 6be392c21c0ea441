import type { ComponentChildren } from 'preact'
import { LONGEST_WORDS } from '../case/longest-words.js'
import { KINDS, MOST_PHOTOS } from '../case/photo-limits.js'
import { photoAddress } from '../wire/photo-address.js'
import { usePlainWording } from '../wording/plain-language.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { NOW, plainAddress, type CasePage } from './page.js'
import { PlainField, PlainForm } from './plain-form.js'

/** The way to a specialist: the photos first, then contact and note, and the button that hands over. */
export function PlainHandOver({ page, mayLeave, children }: { readonly page: CasePage, readonly mayLeave: boolean, readonly children?: ComponentChildren }) {
  const { view, region, typed, fault } = page
  const words = useSheetWording().handOver
  const plain = usePlainWording()
  return (
    <div class="step hand-over" id={NOW}>
      <h2 class="step-title">{words.title}</h2>
      {children}
      <p>{words.lead}</p>
      <PlainPhotos page={page} mayRemove />
      <PlainForm link={view.link} change="hand-over" revision={view.revision} class="hand-over">
        <p class="hint">{plain.photo.first}</p>
        <fieldset>
          <legend>{region.sendsMail ? words.contactLead : words.contactLeadNoMail}</legend>
          <div class="contact">
            <PlainField name="name" label={words.name} hint={words.optional} autocomplete="name" longest={120} value={typed['name'] ?? ''} fault={fault} />
            <PlainField name="email" label={words.email} hint={words.optional} type="email" autocomplete="email" longest={254} value={typed['email'] ?? ''} fault={fault} />
            <PlainField name="phone" label={words.phone} hint={words.optional} type="tel" autocomplete="tel" longest={40} value={typed['phone'] ?? ''} fault={fault} />
            <PlainField name="callTime" label={words.callTime} hint={words.optional} longest={120} value={typed['callTime'] ?? ''} fault={fault} />
          </div>
          <p class="hint">{words.privacy}</p>
        </fieldset>
        <PlainField name="note" label={words.note} rows={3} longest={LONGEST_WORDS} value={typed['note'] ?? ''} fault={fault} />
        <p class="row"><button type="submit" class="main">{words.submit}</button>{mayLeave && <a href={plainAddress(view.link)}>{words.cancel}</a>}</p>
      </PlainForm>
    </div>
  )
}

/** The photos of the sheet, and a field that sends one more. */
export function PlainPhotos({ page: { view, uploadKey, fault }, mayRemove }: { readonly page: CasePage, readonly mayRemove: boolean }) {
  const words = useSheetWording().photos
  const plain = usePlainWording()
  return (
    <section class="photos" aria-labelledby="photos-title">
      <h3 id="photos-title">{words.title}</h3>
      <p class="hint">{words.hint}</p>
      <ul>
        {view.photos.map(({ photo, width, height }, place) => (
          <li key={photo}>
            <img class="thumb" src={photoAddress(view.link, photo, 'small')} width={width} height={height} alt={words.photo(place + 1)} />
            {mayRemove && (
              <form method="post" action={plainAddress(view.link, `photos/${photo}/remove`)}>
                <button type="submit" class="quiet" aria-label={words.removePhoto(place + 1)}>{words.remove}</button>
              </form>
            )}
          </li>
        ))}
      </ul>
      {view.photos.length >= MOST_PHOTOS ? <p class="hint">{words.full(MOST_PHOTOS)}</p> : (
        <form class="photo-add" method="post" encType="multipart/form-data" action={plainAddress(view.link, `photos/${uploadKey}`)}>
          <label for="photo">{plain.photo.choose}</label>
          <input id="photo" name="photo" type="file" accept={KINDS} aria-describedby={fault?.field === 'photo' ? 'fault-photo photo-hint' : 'photo-hint'} />
          <p class="hint" id="photo-hint">{plain.photo.one}</p>
          {fault?.field === 'photo' && <p class="fault" id="fault-photo">{fault.words}</p>}
          <button type="submit" class="second">{plain.photo.add}</button>
        </form>
      )}
    </section>
  )
}
