import type { AskerErrorCode, ErrorWords } from './asker-errors.js'

/** The faults that askers can meet, in Spanish. A new one is missing here until it is written. */
export const errorsEs: Readonly<Record<AskerErrorCode, ErrorWords>> = {
  CASE_NOT_FOUND: {
    title: 'No existe esta ficha', sentence: 'Ninguna ficha tiene este enlace. Mire si lo copió entero, o haga su pregunta de nuevo.',
  },
  STALE_REVISION: {
    title: 'La ficha ha cambiado',
    sentence: 'Mientras tanto, la ficha se cambió desde otro sitio. Aquí está como quedó. De este cambio no se guardó nada.',
  },
  CASE_STOPPED: {
    title: 'La ficha está parada',
    sentence: 'Esta ficha no sigue con la pregunta sobre la planta. Haga lo que dice la tarjeta. Todavía puede entregarla a un especialista.',
  },
  NO_RED_FLAG: { title: 'No hay aviso', sentence: 'No hay ninguna tarjeta de aviso, así que no hay nada que confirmar.' },
  CASE_FULL: { title: 'La ficha está llena', sentence: 'Esta ficha ya no admite más cambios. Todavía puede entregarla a un especialista.' },
  PLACE_FIRST: { title: 'Primero la planta', sentence: 'Todavía no se sabe qué planta es. Elija primero la planta y después responda.' },
  NOT_ANSWERED: { title: 'No hay nada que quitar', sentence: 'A «{check}» no se ha respondido, así que no hay respuesta que quitar.' },
  UNKNOWN_HOST: { title: 'Planta desconocida', sentence: 'La guía no tiene ninguna planta llamada «{host}».' },
  UNKNOWN_NODE: { title: 'Problema desconocido', sentence: 'Para «{host}», la guía no tiene nada llamado «{node}».' },
  UNKNOWN_CHECK: { title: 'Pregunta desconocida', sentence: 'La guía no tiene ninguna pregunta llamada «{check}».' },
  UNKNOWN_ANSWER: {
    title: 'Respuesta desconocida', sentence: 'La pregunta «{check}» no admite la respuesta «{answer}». Elija una de las que se ofrecen.',
  },
  UNKNOWN_DISTRICT: { title: 'Zona desconocida', sentence: 'No tenemos ninguna zona llamada «{district}».' },
  HOST_NOT_FOUND: { title: 'No existe esa planta', sentence: 'La guía no tiene ninguna planta con ese nombre.' },
  PHOTO_NOT_FOUND: { title: 'No existe esa foto', sentence: 'Esta ficha no tiene ninguna foto con ese número.' },
  PHOTOS_FULL: {
    title: 'No caben más fotos',
    sentence: 'En una ficha caben {most} fotos a la vez. Antes de añadir otra, quite una. Se puede hasta que entregue la ficha.',
  },
  PHOTO_NOT_A_PICTURE: { title: 'No es una foto', sentence: 'Este archivo no es una foto que podamos abrir. Envíe una imagen JPEG, PNG o WebP.' },
  PHOTO_IN_PHONE_FORMAT: {
    title: 'Un formato que no podemos abrir',
    sentence: 'Su teléfono guardó esta foto en un formato que no podemos abrir (HEIC o AVIF). Elíjala otra vez desde esta página en el teléfono, o ponga la cámara en su formato más compatible, o envíe una captura de pantalla de la foto.',
  },
  PHOTO_BROKEN: { title: 'La foto está dañada', sentence: 'Esta foto no se puede leer hasta el final. Envíela otra vez o haga una nueva.' },
  PHOTO_TOO_MANY_PIXELS: {
    title: 'La foto es demasiado grande', sentence: 'Esta foto tiene más de 50 millones de píxeles. Envíe una más pequeña, o solo una parte.',
  },
  PHOTO_TOO_SLOW: { title: 'La foto tarda demasiado', sentence: 'Esta foto tarda demasiado en abrirse. Envíe una más pequeña o haga una nueva.' },
  PHOTOS_BUSY: {
    title: 'Demasiadas fotos a la vez', sentence: 'En este momento llegan muchas fotos. Espere {seconds} segundos y envíela otra vez.',
  },
  PHOTOS_OUT_OF_ORDER: {
    title: 'No se pueden abrir fotos',
    sentence: 'Ahora no podemos abrir fotos. A la suya no le pasa nada. Siga sin ella y envíela otra vez más tarde.',
  },
  PHOTO_REMOVED: { title: 'La foto se quitó', sentence: 'Esta foto se quitó de la ficha. Añádala otra vez si quiere que esté.' },
  PHOTO_HANDED_OVER: {
    title: 'La foto está con el especialista',
    sentence: 'La ficha ya se entregó, así que sus fotos se quedan con ella. Si hay que quitar una, pídaselo al especialista.',
  },
  BODY_DOES_NOT_FIT: { title: 'Lo enviado no encaja', sentence: 'Lo que se envió no encaja. Cada fallo está en la lista, con su lugar.' },
  UNREADABLE_TEXT: { title: 'No se puede leer', sentence: 'No podemos leer las letras de lo que se envió. No se cambió nada.' },
  TOO_LARGE: { title: 'Demasiado largo', sentence: 'Lo que se envió ocupa más de 64 kB. Acórtelo y envíelo otra vez.' },
  FILE_TOO_LARGE: { title: 'Demasiado grande', sentence: 'Este archivo ocupa más de {most}. Envíe uno más pequeño.' },
  BAD_REQUEST: { title: 'No se entiende', sentence: 'No podemos leer lo que se envió.' },
  OTHER_ORIGIN: {
    title: 'Desde otra página', sentence: 'Esto se envió desde una página que no es la del servicio de ayuda. No se hizo nada.',
  },
  TOO_MANY: { title: 'Demasiadas a la vez', sentence: 'Llegaron demasiadas cosas a la vez. Espere un minuto y pruebe otra vez.' },
  NO_SUCH_PLACE: { title: 'Aquí no hay nada', sentence: 'En esta dirección no hay nada.' },
  NOT_READY: { title: 'No está listo', sentence: 'El servicio no puede leer sus fichas. Pruebe otra vez dentro de un momento.' },
  UNEXPECTED: {
    title: 'Algo ha fallado',
    sentence: 'Algo ha fallado por nuestra parte. No se ha perdido nada de lo confirmado. Pruebe otra vez. Si sigue igual, díganos el número de la petición.',
  },
}
