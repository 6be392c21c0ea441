import { ENGLISH } from './en.js'
import { remember } from './remember.js'
import { both, listed, partNames, type Speech } from './speech.js'
import { spanishSingular, spanishStem } from './spanish-stems.js'

/**
 * Spanish, as it is spoken in questions about plants in Spain and America; accents are folded away before. English small
 * words count too, since people who live between two languages mix them. Lists: common practice, no source.
 */
const STOP = listed(`
  el la los las lo un una unos unas al del de a en con por para y o e u que se le les me te nos mi mis tu tus su sus nuestro nuestra nuestros nuestras
  mio mia este esta esto estos estas ese esa eso esos esas aquel aquella yo usted ustedes ella ellos ellas
  es son era eran fue fueron ser sea esta estan estaba estaban estar este estoy estamos sido siendo hay habia hubo haber
  ha han he hemos habian tiene tienen tengo tenemos tenia tenian tener teniendo tenido tuvo tuve tuvimos tuvieron
  hace hacen hago hacer haciendo hizo hicieron puede pueden puedo podemos poder podria podrian debo debe deben deberia
  va van voy vamos ir iba iban ido vaya poner pone ponen puso pusieron poniendo puesto puesta puestas puestos
  muy mas menos tan tanto tanta tantos tantas mucho mucha muchos muchas poco poca pocos pocas algo algun alguna algunos algunas todo toda todos todas cada otro otra otros otras mismo misma
  ya aun todavia ahora hoy ayer anoche luego despues antes siempre casi solo solamente tambien ademas bien mal bueno buena buenos buenas malo mala
  como cuando cuanto cuanta cuantos cuantas donde quien cual cuales porque pues si entonces asi aqui ahi alli
  hola gracias favor ayuda ayudar ayudarme ayudenme dias tardes noches saludos disculpe disculpen perdon oiga quisiera quiero queria necesito saber sabe saben se decir dice dicen dijo digan diganme creo parece parecen pienso
  ver veo ven vi visto vio mirar miro mire sale salen salio salieron salido saliendo salir aparece aparecen aparecio aparecieron aparecido apareciendo encuentro encontre noto note
  dia semana semanas mes meses ano anos vez veces tiempo rato hora horas desde hasta durante
  cosa cosas planta plantas plantita plantitas mata matas matita jardin huerto huerta casa problema problemas pasa paso pasando sucede ocurre
  esque osea eh ay uy bueno pos tipo clase forma parte partes poquito ultimamente recien recientemente
  dos tres dejo deja dejan sigue siguen
`)

/** Spanish and the English around it, before the words of a guide are known. */
export const SPANISH: Speech = {
  dangerLetters: null,
  jobLetters: null,
  stem: remember(spanishStem), singular: spanishSingular, stopWords: both(STOP, ENGLISH.stopWords), everydayWords: ENGLISH.everydayWords, silent: STOP,
  negations: both(ENGLISH.negations, listed('no ni nunca jamas sin nada nadie ningun ninguna ninguno ningunos ningunas tampoco')),
  deniesWithTo: new Set(),
  passesNegation: both(ENGLISH.passesNegation, listed('encuentro encontre encontrar encontramos hallo veo vemos noto rastro rastros senal senales')),
  endsNegation: both(ENGLISH.endsNegation, listed('pero sino solo excepto salvo porque y aunque asi pues')),
  names: {
    between: both(ENGLISH.names.between, listed('el la los las un una unos unas mi mis tu tus su sus nuestro nuestra nuestros nuestras este esta estos estas ese esa esos esas viejo vieja gran pequeno pequena vecino vecina')),
    nearby: both(ENGLISH.names.nearby, new Set([
      'bajo', 'entre', 'tras', 'como', 'excepto', 'salvo', 'ni', 'cerca de', 'cerca del', 'debajo de', 'debajo del', 'junto a', 'junto al', 'detras de', 'detras del', 'lado de', 'lado del',
      'encima de', 'encima del', 'delante de', 'delante del', 'enfrente de', 'enfrente del', 'alrededor de', 'alrededor del', 'parecido a', 'parecida a', 'parecidas a', 'igual que', 'vez de', 'lugar de', 'lejos de',
      'huele a', 'huelen a', 'pie de', 'pie del',
    ])),
    alongside: both(ENGLISH.names.alongside, new Set(['de al lado', 'a su lado', 'junto a el', 'junto a ella', 'cerca de el', 'cerca de ella'])),
    thingsOf: new Set([
      'mermelada de', 'jugo de', 'zumo de', 'salsa de', 'pastel de', 'tarta de', 'sopa de', 'vinagre de', 'caja de', 'bolsa de', 'color de', 'tamano de', 'forma de', 'tamano del', 'agua de', 'ensalada de',
    ]),
    being: both(ENGLISH.names.being, listed('esta estan estaba estaban siguen sigue van va')),
    degrees: both(ENGLISH.names.degrees, listed('muy todos todas bastante la los las perfectamente')),
    becoming: both(ENGLISH.names.becoming, listed('casi')),
    colours: both(ENGLISH.names.colours, listed('limon')),
    fine: both(ENGLISH.names.fine, listed('bien sano sana sanos sanas perfecto perfecta perfectos perfectas bonitos bonitas limpios limpias buenas buenos')),
    inPlace: both(ENGLISH.names.inPlace, listed('en por sobre del')),
  },
  answers: {
    joining: both(ENGLISH.answers.joining, listed('el la los las un una unos unas mi mis su sus es son era esta estan ha han se le les me de del en al con')),
    passedOver: both(ENGLISH.answers.passedOver, listed('el la los las un una unos unas mi mis su sus este esta estos estas de del se le les me ha han esta estan son es muy mas todo toda todos todas ya ahora tambien un poco como que')),
    denying: both(ENGLISH.answers.denying, listed('no ni nunca sin nada ningun ninguna')),
    asking: both(ENGLISH.answers.asking, listed('si acaso quizas quiza tal podria podrian seria seran sera puede pueden evitar prevenir impedir miedo temo preocupa creo cree creen pienso piensa sospecho parece parecen dice dicen dijo dijeron supongo sin')),
    colours: both(ENGLISH.answers.colours, listed('blanco blanca blancos blancas gris grises negro negra negros negras marron marrones cafe cafes amarillo amarilla amarillos amarillas verde verdes naranja naranjas rojo roja rojos rojas rosa morado morada morados moradas')),
    following: both(ENGLISH.answers.following, listed('de por desde despues dentro fuera arriba abajo encima debajo rapido rapidamente')),
    clauseWords: both(ENGLISH.answers.clauseWords, listed('y pero o mientras e')),
    question: either(ENGLISH.answers.question, /\b(?:hay|sera|seran|seria|tendra|tendran)$|\b(?:puede|pueden|podria|podrian) (?:ser|haber|tener)\b/u),
    somebodyElses: either(ENGLISH.answers.somebodyElses, /\b(?:vecin[oa]s?|otr[oa]s? (?:plantas?|matas?|arbol(?:es)?))\b/u),
    anotherYear: either(ENGLISH.answers.anotherYear, /\b(?:(?:ano|verano|invierno|otono|temporada|primavera) (?:pasad[oa]|anterior)|hace (?:anos|un ano))\b/u),
    over: either(ENGLISH.answers.over, /\b(?:ya no (?:hay|tiene|tienen|esta|estan)|en vez de|en lugar de|descart\w+)(?: \w+)?$/u),
    takenBack: either(ENGLISH.answers.takenBack, /^(?:quizas?|tal vez|no estoy segur[oa])\b|\bpero ya no (?:esta|estan|hay|tiene|tienen)\b/u),
    likened: either(ENGLISH.answers.likened, /\b(?:parece|parecen|parecia|parecian|como)(?: \w+){1,4}$/u),
    unlikened: either(ENGLISH.answers.unlikened, /\bpero no (?:es|son|lo es|lo son|era|eran)\b/u),
    askedOfAll: ENGLISH.answers.askedOfAll,
    besides: either(ENGLISH.answers.besides, /\bde al lado\b/u),
    beforeThat: both(ENGLISH.answers.beforeThat, listed('antes hasta')),
    noLonger: both(ENGLISH.answers.noLonger, listed('luego entonces')),
    once: either(ENGLISH.answers.once, /\b(?:estaba|habia estado|estuvo)(?: \w+)?$/u),
    times: either(ENGLISH.answers.times, /\b(?:primavera|verano|otono|invierno|enero|febrero|marzo|abril|mayo|junio|julio|agosto|septiembre|octubre|noviembre|diciembre|noche|dias?|semanas?|mes|meses|anos?)\b/u),
    acts: both(ENGLISH.answers.acts, listed('corte cortamos pode podamos podado plante plantamos plantado plantada sembre sembramos sembrado trasplante trasplantado abone abonado fumigue compre compramos compro')),
    recovering: both(ENGLISH.answers.recovering, listed('recupera recuperan recupero revive reviven mejora mejoran')),
    parts: new Map([...ENGLISH.answers.parts, ...partNames(['leaf hoja', 'flower flor petalo', 'fruit fruto fruta baya vaina', 'root raiz tuberculo'])]),
    ofAnotherYear: ENGLISH.answers.ofAnotherYear,
  },
}

function either(one: RegExp, other: RegExp): RegExp {
  return new RegExp(`${one.source}|${other.source}`, 'u')
}
