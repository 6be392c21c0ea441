/**
 * Words of a question that say nothing about a plant. `not`, `no`, `never`, `under`, `inside` are kept out of this
 * list on purpose: "never opens" and "under the leaf" are what some complaints turn on.
 */
export const STOP_WORDS: ReadonlySet<string> = new Set(
  `a an the my our your his her its their mine ours this that these those there here it they them he she i we you me us im ive id ill
  is are was were be been being am isnt arent has have had having hasnt havent do does did doing dont doesnt didnt
  will would can could should may might must shall cant wont
  and or but so if then than as at by for from in into of off on onto out to up down with without about over
  just very really quite also too still even now all any some sum every each both many much more most lots lot few bit kind sort type
  what whats when where which who why how get gets got getting go goes going gone went seem seems look looks looking like
  please help thanks thank hello hi hey know think tell see seen say says said want need needs
  right wrong sure dunno idea ill sick poorly look looked reckon guess first time times lot
  have having been because cause since after before again only own same such well ok okay oh um
  thing things stuff something anything everything plant plants garden gardens year years day days week weeks month months
  ago today yesterday lately recently suddenly think wondering problem problems wrong happened happening
  one two old new big small little good bad lovely nice away back around put let make made keep keeps kept`
    .split(/\s+/u),
)
