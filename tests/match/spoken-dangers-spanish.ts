// Sentences written for this test, as people say and misspell them in Spanish; no source. They were written apart from the hear
// lists of trees/red-flags/*.es.yaml.

/** By red flag, what must raise it. */
export const HEARD_IN_SPANISH: Readonly<Record<string, readonly string[]>> = {
  'someone-ate-plant': [
    'mi hijo se comió unas bayas rojas del jardín',
    'mi hija de 2 años se ha tragado una semilla de ricino',
    'el bebe se metio una hoja de la planta a la boca',
    'mi nieto probó los frutitos negros de un arbusto',
    'comimos unas setas del bosque y ahora tengo vomitos',
    'me comí por error una hoja de adelfa',
    'la niña chupó el tallo de la dieffenbachia y se le durmió la lengua',
    'mi abuela hizo una infusión con hojas que creía que eran de salvia y se siente muy mal',
    'el calabacin estaba amargo y nos lo comimos, ahora mi marido tiene diarrea',
    'mi hijo mordio un bulbo de narciso',
    'cené bulbos de tulipán pensando que eran cebollas',
    'un niño de mi clase se comio vayas de hiedra',
    'encontré a mi hija masticando hojas de la hortensia',
    'mi marido se bebió el herbicida de una botella de agua',
  ],
  'pet-ate-plant': [
    'el perro mordió los lirios', 'mi gato se comió una hoja de azucena', 'el gato tiene polen de lirio en el pelo',
    'mi perra se tragó bolitas azules para caracoles', 'mi perro está vomitando después de comer una planta',
    'las cabras se comieron la adelfa', 'el caballo comió ramas de tejo', 'mi conejo mordisqueó un ciclamen',
    'la perrita se tomó el agua del florero', 'el cachorro ha masticado el pothos', 'mi gata lame las hojas de la monstera',
    'creo que envenenaron a mi perro',
  ],
  'something-in-eyes': [
    'me cayó el spray en los ojos', 'me entró savia en el ojo', 'se me metió tierra en el ojo podando',
    'a mi hijo le saltó leche de euforbia en los ojos', 'una rama me golpeó el ojo', 'me arden los ojos después de podar la higuera',
    'se clavó una espina en el ojo', 'me lloran los ojos desde que rocié las plantas', 'me toqué los ojos después de cortar chiles y no veo bien',
  ],
  'spray-exposure': [
    'me cayó herbicida en las manos', 'respiré el insecticida y estoy mareado', 'el fumigador se me derramó encima',
    'la avioneta fumigó y nos cayó encima', 'mi hija lamió el bote de insecticida', 'fumigué ayer y hoy tengo dolor de cabeza y nauseas',
    'mezclé cloro con amoniaco y no paro de toser', 'el perro pisó el césped recién fumigado y está babeando', 'mi niño tomó insecticida',
  ],
  'spray-misuse': [
    'eché el doble de insecticida', 'fumigué la cocina con el veneno de las rosas', 'mezclé dos productos para fumigar',
    'rocié las lechugas con fungicida y ya las comimos', 'puse raticida en el huerto para las babosas', 'eché gasolina en el hormiguero',
    'se me derramó el herbicida en el estanque', 'fumigué sin guantes ni mascarilla', 'apliqué el herbicida puro sin diluir',
  ],
  'sap-on-skin': [
    'me salieron ronchas después de podar la ruda', 'toqué hiedra venenosa y me pica todo', 'tengo ampollas en los brazos de arrancar hierbas',
    'me cayó leche de la higuera en la mano y me quema', 'mi hijo se cayó en unas ortigas', 'se me hincharon las manos después de tocar una planta',
    'la savia de la euforbia me quemó la piel', 'me arden las manos por la planta',
  ],
  injury: [
    'me caí de la escalera podando el manzano', 'mi marido se cortó un dedo con la tijera de podar', 'me corté con la motosierra',
    'la sangre no para', 'me mordió una víbora en el jardín', 'le picó una avispa y tiene la cara hinchada', 'una rama le cayó en la cabeza a mi padre',
    'me dio corriente el cortasetos', 'se me infectó el dedo por una espina de rosal y tengo una línea roja',
  ],
  'tree-hazard': [
    'el árbol se va a caer sobre la casa', 'una rama está tocando los cables de luz', 'el pino está muy inclinado hacia la calle después del viento',
    'se cayó un árbol encima del coche', 'hay un cable caído en el jardín', 'las raíces del árbol se están levantando y cruje con el viento',
    'se rajó una rama grande y cuelga encima del camino',
  ],
  'trouble-breathing': [
    'no puede respirar', 'mi hijo no despierta', 'se desmayó después de fumigar', 'le cuesta respirar', 'se le está cerrando la garganta',
    'mi mujer tiene convulsiones', 'el niño se puso morado', 'me falta el aire', 'le picó una abeja en la garganta',
  ],
  'self-harm': [
    'quiero morirme', 'ya no quiero vivir', 'qué planta me mata rápido', 'cuánto herbicida tengo que tomar para morir', 'me quiero suicidar',
    'mi hermano dice que se va a matar', 'voy a tomarme el veneno', 'estarían mejor sin mí', 'no le veo sentido a la vida', 'quiero acabar con todo',
    'quiero quitarme la vida', 'no puedo más con esta vida',
  ],
  'about-to-eat': [
    'encontré setas en el bosque, se pueden comer', 'estamos friendo unos hongos que recogí en el monte', 'puedo comer estas bayas',
    'es comestible esta planta', 'voy a hacer una sopa con raíces silvestres', 'puedo poner flores de adelfa en la ensalada', 'estos hongos son comestibles?',
  ],
  'poison-question': [
    'es venenosa esta planta para los niños', 'la hortensia es tóxica para gatos', 'es peligroso tocar esta planta', 'las bayas son venenosas', 'hace daño si la come un perro',
    'qué pasa si mi hijo la come',
  ],
  'harmful-smoke': [
    'quemamos ramas de adelfa y respiramos el humo', 'hicimos el asado con leña de laurel y nos duele la cabeza', 'quemé hiedra venenosa',
    'puedo quemar madera tratada', 'me ahoga el humo de la fogata de hojas', 'usamos palitos de adelfa de pinchos en la barbacoa',
  ],
  'small-wound': [
    'me pinché con una espina de rosal', 'necesito la vacuna del tétanos', 'me clavé una astilla', 'me arañé con las zarzas', 'se me enterró una espina de cactus', 'me corté con un alambre',
  ],
  'compost-dust': [
    'toso después de mover el compost', 'respiré polvo de la compostera', 'me da tos la tierra de la bolsa', 'tengo tos y fiebre desde que removí el abono', 'estornudo con el moho del compost',
    'necesito mascarilla para el compost con polvo',
  ],
  'spray-question': [
    'cuánto tiempo hay que esperar para comer los tomates después de fumigar', 'cuándo puede salir el perro después del herbicida', 'el insecticida daña a las abejas',
    'cuál es el plazo de seguridad', 'puedo usar un insecticida en la lechuga', 'cuántos días después de sulfatar puedo cosechar',
  ],
}

/** Complaints about plants that must raise no emergency. */
export const CALM_IN_SPANISH: readonly string[] = [
  'las babosas se comieron todas mis lechugas', 'algo se come las hojas de mis fresas de noche', 'los pájaros se comieron las fresas', 'las hojas se ponen amarillas',
  'manchas negras en las hojas del rosal', 'el pepino tiene polvo blanco en las hojas', 'los tomates están negros por abajo', 'mi planta se está muriendo',
  'no puedo más con los pulgones', 'quiero acabar con las babosas', 'las manzanas se caen antes de madurar', 'mi rosal está enfermo', 'las hojas tienen agujeros y hay bichos',
  'la lechuga sabe amarga', 'los pepinos salen amargos', 'puedo podar el manzano ahora', 'mi marido regó demasiado la orquídea', 'qué puedo hacer con las hojas secas',
  'las hojas parecen quemadas por el sol', 'el rosal tiene muchas espinas y pocas flores', 'tengo setas en el césped', 'el tallo está blando y marrón', 'mi hija dice que las hojas tienen manchas',
  'las flores se caen del pepino', 'cuánta agua necesita la lechuga', 'las raíces de la orquídea están blandas', 'la parra tiene moho gris en las uvas', 'los caracoles se comen las plantas de mi vecina',
  'el manzano no da flores este año', 'las hojas nuevas salen enroscadas y pegajosas', 'la papa tiene manchas oscuras por dentro', 'se cayeron todas las hojas del árbol', 'probé con jabón y no funcionó',
  'mi césped tiene parches amarillos', 'las ramas del manzano tienen heridas en la corteza', 'el gato hace pis en el césped y queda amarillo', 'tomé una foto de la hoja', 'el cactus está blando por abajo',
  'los capullos se ponen marrones y no se abren', 'hay gusanos dentro de las manzanas', 'el año pasado eché fertilizante y creció bien', 'me comieron los brotes los conejos', 'los ciervos se comen los rosales',
  'qué bicho es este', 'la lechuga se espigó', 'las hojas de abajo están amarillas y las de arriba bien', 'podé el rosal y ahora las ramas se secan', 'corté una hoja y por dentro está marrón',
  'la planta no responde al riego', 'la rama se quebró por el peso de la fruta', 'mi madre me regaló una orquídea y se le caen las flores', 'al niño le gusta regar y las raíces se pudrieron',
  'la helada quemó las flores de las fresas', 'hay hormigas en el césped', 'qué seta sale en mi maceta',
]
