/**
 * Questions in Spanish, invented for this test, with the host and the nodes that a good volunteer would begin at. Written from
 * the English entry phrases and node names before the Spanish phrases of the guide were looked at; common practice, no source.
 * Many voices: accents left out, misspelt, a few words, a ramble, capitals, Spain and America.
 */
export interface SpanishQuestion {
  readonly words: string
  readonly host: string
  readonly nodes: readonly string[]
}

const about = (host: string, list: readonly (readonly [string, ...string[]])[]): readonly SpanishQuestion[] =>
  list.map(([words, ...nodes]) => ({ words, host, nodes }))

export const SPANISH_QUESTIONS: readonly SpanishQuestion[] = [
  ...about('tomato', [
    ['las hojas de abajo de mis tomates se están poniendo amarillas', 'yellow-order'],
    ['tomate hojas amarillas', 'yellow-order'],
    ['mis jitomates tienen una mancha negra en la parte de abajo del fruto', 'fruit-water', 'fruit-look'],
    ['los tomates se rajan después de la lluvia', 'split-water', 'fruit-look'],
    ['Tengo flores en las tomateras pero no sale ningún tomate, las flores se caen', 'no-fruit'],
    ['las matas de tomate se enrollan las hojas para arriba', 'curl-look'],
    ['manchas cafes en las ojas del tomate', 'spot-kind'],
    ['algo se esta comiendo las hojas de mis tomates por la noche', 'hole-look'],
    ['pulgones en los brotes del tomate y las hojas pegajosas', 'coating-bugs'],
    ['los tomates siguen verdes y no maduran', 'ripen-leaves'],
    ['la tomatera está marchita aunque la riego todos los días', 'wilting'],
    ['mi vecino echó herbicida y ahora las hojas del tomate están retorcidas', 'weed-killer', 'curl-look'],
    ['los tallos y las hojas del tomate se ponen negros de golpe', 'brown-stems', 'stem-marks'],
    ['moho gris en los tallos del tomate en el invernadero', 'grey-dust'],
    ['BUENAS, A MIS TOMATES LES SALEN AGUJEROS EN LOS FRUTOS, QUE PUEDE SER', 'animals', 'fruit-look'],
    ['los almácigos de tomate se caen y se mueren', 'seedlings'],
  ]),
  ...about('lettuce', [
    ['babosas me comen la lechuga', 'hole-look'],
    ['la lechuga se ha espigado y está amarga', 'middle'],
    ['lechugas con pelusa blanca debajo de las hojas', 'underside'],
    ['puntas marrones en las hojas de adentro de la lechuga', 'brown-where'],
    ['mi lechuga se pudre por abajo, las hojas de abajo son una baba', 'underneath'],
    ['bichitos verdes dentro de la lechuga', 'bugs'],
    ['lechuga mustia, como sin agua', 'wilting'],
    ['sembré lechugas hace 3 semanas y no nace nada', 'sown'],
    ['agujeros en las ojas de las lechugas', 'hole-look'],
    ['cuando corto la lechuga le sale una leche blanca', 'only-sap'],
  ]),
  ...about('strawberry', [
    ['las fresas tienen moho gris', 'fruit-look'],
    ['frutillas podridas con pelusa', 'fruit-look'],
    ['los pajaros se comen mis fresas', 'eaten'],
    ['manchas rojas y moradas en las hojas de la fresa', 'leaf-look'],
    ['las flores de las fresas estan negras por el centro', 'flower-middle'],
    ['cada año dan menos fresas, la cama ya es vieja', 'age'],
    ['las plantas de fresa se marchitan una por una', 'wilt-soil'],
    ['pulgón verde en las hojas de las fresas', 'bugs'],
    ['algo hace hoyos en las fresas', 'eaten'],
  ]),
  ...about('rose', [
    ['manchas negras en las hojas del rosal', 'spot-look'],
    ['polvo blanco en las hojas de mi rosal', 'coating'],
    ['rosas con polvillo naranja por debajo de las hojas', 'rust-under'],
    ['los capullos del rosal se secan y no se abren', 'bud-look'],
    ['pulgones en los capullos de las rosas', 'curl-bugs'],
    ['algo corta círculos perfectos en las hojas del rosal', 'hole-look'],
    ['mi rosal parece muerto, ¿está vivo?', 'scratch'],
    ['se secan las ramas de mi rosal', 'dead-wood'],
    ['rozal con manchas negras, se le caen las hojas', 'spot-look'],
    ['gusanitos verdes en las hojas de las rosas, las dejan transparentes', 'grubs', 'hole-look'],
  ]),
  ...about('apple', [
    ['manzanas con gusanos', 'cut'],
    ['mi manzano tiene algodón blanco en las ramas', 'wool', 'bark'],
    ['se caen las manzanas chiquitas', 'drop'],
    ['hojas enrolladas en el manzano', 'curl'],
    ['el manzano no florece', 'blossom'],
    ['avispas en las manzanas', 'eaten'],
    ['manzano: corteza con una herida hundida que crece cada año', 'canker', 'bark'],
    ['las manzanas tienen costras y manchas oscuras', 'fruit'],
    ['polvo blanco en los brotes nuevos del manzano', 'coating'],
    ['setas al pie del tronco del manzano', 'base', 'under-bark'],
    ['abrí una mansana y habia un gusano adentro', 'cut'],
  ]),
  ...about('cucumber', [
    ['polvo blanco en las hojas del pepino', 'marks'],
    ['los pepinitos se ponen amarillos y se caen', 'fruit-look'],
    ['la mata de pepino se marchita de repente', 'base-look'],
    ['pepinos amargos', 'fruit-look'],
    ['pulgones negros en los pepinos', 'bugs'],
    ['las plantitas de pepino se las comieron en una noche', 'hole-bugs'],
    ['sembre pepinos y no salen', 'seed-base'],
    ['los pepinos no crecen desde que los pasé afuera, hace frío', 'cold-look'],
  ]),
  ...about('cactus', [
    ['mi cactus está blando y podrido por abajo', 'base'],
    ['cactus arrugado', 'water'],
    ['mi cactus crece largo y delgado', 'light'],
    ['bolitas de algodon blanco entre las espinas del cactus', 'pests'],
    ['por qué no florece mi cactus', 'rest'],
    ['mi cáctus se puso marrón y duro en la base', 'bark'],
    ['creo que la flor del cactus esta pegada con pegamento', 'glued'],
  ]),
  ...about('grape', [
    ['ceniza blanca en las uvas', 'fruit'],
    ['la parra tiene ampollas en las hojas', 'leaf'],
    ['podé la vid y no para de gotear agua', 'cuts'],
    ['mi parra está enorme y no da uvas', 'pruning'],
    ['las uvas se pudren en el racimo', 'fruit'],
    ['polvo blanco en las hojas de la parra', 'leaf'],
  ]),
]

/** What no tree answers, and no danger. */
export const SPANISH_OUT_OF_SCOPE: readonly string[] = [
  '¿a qué hora abren?', 'quiero vender mi coche', 'cuánto cuesta una pala nueva', '¿dónde puedo comprar macetas?', 'no me funciona el televisor',
  'hola buenos días', 'cómo hago para cambiar la contraseña',
]

/** English words in a conversation held in Spanish. */
export const MIXED_QUESTIONS: readonly SpanishQuestion[] = [
  { words: 'white powder on my rose leaves', host: 'rose', nodes: ['coating'] },
  { words: 'mis tomatoes tienen yellow leaves', host: 'tomato', nodes: ['yellow-order'] },
  { words: 'slugs are eating my lettuces', host: 'lettuce', nodes: ['hole-look'] },
  { words: 'mi cucumber tiene mildew en las hojas', host: 'cucumber', nodes: ['marks'] },
  { words: 'grubs in my apples', host: 'apple', nodes: ['cut'] },
]
