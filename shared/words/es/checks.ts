// The checks of the shipped profiles, in Spanish.
import type { SharedWords } from '../shared-words.ts';

export const checks: SharedWords['checks'] = {
  airReady: {
    question: (temperature, humidity) =>
      `¿Está el aire de la sala de injerto y del túnel a ${temperature} y ${humidity}?`,
    ifNo: 'Espere a injertar hasta que el aire esté bien: caliente o sombree la sala, moje el suelo del túnel.',
  },
  filmAndFloorDamp: {
    question: '¿Están húmedos el plástico y el suelo del túnel?',
    ifNo: 'Moje suelo y plástico antes de meter la primera bandeja; no empape las bandejas.',
  },
  newBlade: {
    question: '¿Se usa una cuchilla nueva para cada bandeja?',
    ifNo: 'Ponga en cada puesto una caja de cuchillas y un bote para las usadas, y cambie antes de la bandeja siguiente.',
  },
  handsAndTools: {
    question: '¿Están desinfectadas las manos y las herramientas?',
    ifNo: 'Pare y desinfecte según la etiqueta; otra vez después de cada descanso.',
  },
  noTobacco: {
    question: '¿Se mantiene el tabaco lejos de plantas, manos y ropa?',
    ifNo: 'Lávese las manos y cambie guantes y delantal: el tabaco puede llevar un virus a las plantas.',
  },
  noDirectSun: {
    question: '¿Está el túnel sin sol directo?',
    ifNo: 'Cierre la pantalla o cuelgue una malla de sombra antes de meter la primera bandeja.',
  },
  filmWet: {
    question: '¿Está el plástico mojado por dentro?',
    ifNo: 'Busque una junta abierta, moje suelo y plástico, cierre y vuelva a mirar en una hora.',
  },
  scionsErect: {
    question: '¿Están erguidas las plantas injertadas?',
    ifNo: 'Cierre el túnel, nebulice un poco y pause el plan hasta que se levanten.',
  },
  lookThroughGap: {
    question: 'Mire por una abertura pequeña y cierre: ¿están las plantas erguidas y frescas?',
    ifNo: 'Si huele a cerrado, deje entrar un poco de aire y cierre; si están lacias, nebulice y pause el plan.',
  },
  erectAfterStep: {
    question: '¿Siguen erguidas las plantas una hora después de este paso de ventilación?',
    ifNo: 'Cierre la abertura, nebulice un poco y pause el plan.',
  },
  erectWhenOpen: {
    question: '¿Están erguidas las plantas con el túnel abierto del todo?',
    ifNo: 'Cierre el túnel en parte, nebulice un poco y pause el plan.',
  },
  filmOffBeforeSun: {
    question: '¿Se quitó el plástico antes de que el sol llegue a las plantas?',
    ifNo: 'Sombree el túnel enseguida: bajo plástico y al sol las plantas se cuecen.',
  },
  feed: {
    question: '¿Han recibido abono las plantas?',
    ifNo: 'Riegue ahora con abono y busque bandejas que se hayan quedado sin él.',
  },
  reportedLimp: {
    question: '¿Están erguidas las plantas injertadas?',
    ifNo: 'Cierre la abertura, nebulice un poco y pause el plan.',
  },
  reportedDry: {
    question: '¿Está el plástico mojado por dentro?',
    ifNo: 'Busque una junta abierta, moje suelo y plástico.',
  },
};
