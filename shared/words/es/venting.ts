// The next step of the opening, in Spanish.
import type { SharedWords } from '../shared-words.ts';

export const venting: SharedWords['venting'] = {
  open: (gap, settles) => `Abra al ${gap} %: ${settles}.`,
  close: (gap, settles) => `Cierre al ${gap} %: ${settles}.`,
  settles: (humidity, plusMinus, minutes) => `debería quedar en ${humidity} ± ${plusMinus} %HR en unos ${minutes} min`,
  partOfTheWay: {
    grace:
      'Es una parte del camino: todo el paso de una vez secaría las plantas más deprisa de lo que permite el perfil.',
    experience: 'Es una parte del camino: aún no se sabe cómo se comporta el aire con una abertura mayor.',
    certainty: 'Es una parte del camino: con una abertura mayor el aire podría bajar del límite inferior.',
  },
  fixed: {
    'gap-never-changed':
      'La abertura aún no se ha cambiado, así que nada muestra con qué rapidez se renueva el aire; abra un poco, anótelo y vuelva a mirar en media hora.',
    'no-house-air': 'No se conoce el aire del invernadero en ese tiempo; coloque una sonda en el invernadero.',
    saturated: 'La humedad estaba en el tope del sensor, donde no se ve su bajada.',
    'too-fast': 'El aire se estabilizó más deprisa de lo que llegan las lecturas; haga que el nodo envíe más a menudo.',
    'too-slow':
      'El aire aún seguía cambiando cuando terminó el plazo y no se ve su ritmo; deje la abertura como está más tiempo.',
    'no-decay':
      'El aire ya estaba estable antes de la primera lectura que cuenta, o apenas se movió; un paso mayor de la abertura muestra más.',
    'two-paces':
      'El aire se movió a dos ritmos, primero deprisa y luego despacio: un plástico o un suelo mojado que se seca oculta la renovación. Un paso mayor muestra más.',
    'other-source':
      'Entonces las plantas y el plástico soltaban mucha más o mucha menos humedad (un plástico mojado, por ejemplo), así que no sirve para ahora.',
    'not-monotone':
      'El ritmo calculado baja al abrir más, así que algo distinto de la abertura movió el aire (viento, un ventilador, una anotación que no es cierta).',
    'fit-too-old':
      'El último cambio de abertura que muestra algo tiene más de un día; haga uno pequeño, anótelo y vuelva a mirar en media hora.',
    'already-there': 'El aire ya está dentro de los límites de este paso; deje la abertura como está.',
    over: 'La ventilación ha terminado.',
    'on-hold':
      'El lote está en pausa: deje la abertura como está y siga con el lote cuando las plantas estén erguidas.',
    'no-step': 'El plan no baja más: deje la abertura como está.',
  },
  readings: (found, needed) =>
    `Solo hay ${found} lecturas tras el cambio y hacen falta ${needed}; deje la abertura como está más tiempo, o haga que el nodo envíe más a menudo.`,
  uncertain: (percent) =>
    `El ritmo sale con ± ${percent} %, demasiado poco seguro; un paso mayor o esperar más muestra más.`,
  poorFit: (percent) =>
    `La renovación del aire explica solo el ${percent} % de lo medido; otra cosa movió la humedad (nebulización, un plástico que se seca, una sonda).`,
  tooFewGaps: (gap) =>
    `Solo la abertura del ${gap} % muestra su ritmo, y hacen falta dos; cambie la abertura, anótelo y vuelva a mirar en media hora.`,
  limp: (acts) => `Se ha avisado de plantas lacias: ${acts}.`,
  limpActs: {
    closed: 'cierre el túnel',
    closeTo: (gap) => `cierre la abertura al ${gap} %`,
    mist: 'nebulice',
    hold: 'ponga el lote en pausa hasta que se levanten',
  },
  noAirNow: {
    chamber: 'Ninguna sonda sana de la cámara da ahora temperatura y humedad.',
    house: 'Ahora no se conoce el aire del invernadero; sin una sonda allí no se puede calcular ninguna abertura.',
  },
  stillSettling: (minutes) =>
    `El aire aún se está estabilizando tras el último cambio; mire otra vez en ${minutes} min.`,
  doesNotMatch: (expected, measured) =>
    `Según el cálculo, con esta abertura el aire debería estar a ${expected} %HR, y está a ${measured}; algo ha cambiado, así que guíese por lo que ve.`,
  houseTooWet: (humidity) =>
    `El aire del invernadero es demasiado húmedo para este paso: al calor de la cámara tiene ya ${humidity} %HR, y ninguna abertura baja de ahí. Seque primero el invernadero.`,
  houseTooDry: (gap, humidity) =>
    `El aire del invernadero es demasiado seco para este paso: incluso al ${gap} %, la menor abertura que se puede juzgar, el aire llegaría a ${humidity} %HR. No abra, o humedezca primero el invernadero.`,
  noNarrowerGap: 'No se ha probado ninguna abertura menor; cierre el túnel y nebulice si el aire sigue demasiado seco.',
  noWiderGap:
    'La abertura es la mayor que se puede juzgar con lo probado; abra más guiándose por lo que ve, anótelo y vuelva a mirar en media hora.',
  noSureNarrowerGap:
    'De ninguna abertura menor se sabe con bastante certeza que quede sobre el límite inferior; cierre el túnel y nebulice si el aire sigue demasiado seco.',
  noSureWiderGap:
    'De ninguna abertura se sabe con bastante certeza que quede sobre el límite inferior; abra poco a poco guiándose por lo que ve y anótelo: así también mejora el cálculo.',
  driesTooFast: (grace) =>
    `Cualquier abertura que ayude secaría el aire más de los ${grace} %HR por hora que permite el perfil; deje la abertura como está.`,
  farOff: 'Aún falta más de medio día para ventilar.',
  notYet: 'El aire está donde lo quiere el plan. La próxima abertura se calcula una hora antes del paso siguiente.',
  exchangeUnknown: (why) => `Aún no se sabe cómo se renueva el aire. ${why}`,
};
