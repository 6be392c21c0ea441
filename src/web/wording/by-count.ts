/** A word in the forms that a language's count rules name; 'other' stands where a form is not written. */
export type CountForms = Partial<Record<Intl.LDMLPluralRule, string>> & { readonly other: string }

/** The form of a word that goes with a count, by the plural rules of the Unicode CLDR that `Intl` brings. */
export function byCount(language: string, count: number, forms: CountForms): string {
  return forms[new Intl.PluralRules(language).select(count)] ?? forms.other
}
