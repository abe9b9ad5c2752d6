// What came of trying the siren and the heartbeat, in Spanish.
import type { SharedWords } from '../shared-words.ts';

export const trials: SharedWords['trials'] = {
  siren: {
    name: 'La sirena',
    switchedOff: 'La sirena está apagada: enciéndala, guarde y pruebe otra vez.',
    inAlarm: 'Ahora suena por una alarma. No se ha cambiado nada.',
    brokerSilent: 'El broker no lo aceptó: compruebe que funciona y que se llega a él.',
    sounded: (on, off) => `El broker confirmó «on» a las ${on} y «off» a las ${off}.`,
    takenOver: (on) => `El broker confirmó «on» a las ${on}. Luego entró una alarma, y la sirena suena por ella.`,
    notBack: (on) => `El broker confirmó «on» a las ${on}, pero no «off»: se repite hasta que el broker lo tenga.`,
    followed: (count) =>
      `${count === 1 ? 'Una conexión sigue' : `${count} conexiones siguen`} su tema. Si algo sonó, solo puede decirlo quien esté al lado.`,
    followedByNobody: 'Nada sigue su tema: conecte la lámpara o la sirena y pruebe otra vez.',
    followersUnknown: 'Con un broker propio no se sabe si algo sigue su tema, ni si sonó: vaya a mirar y a escuchar.',
  },
  heartbeat: {
    name: 'El latido',
    notSet: 'No hay dirección: escríbala, guarde y pruebe otra vez.',
    answered: (clock, status) => `La dirección respondió ${status} a las ${clock}.`,
    refused: (clock, status) =>
      `La dirección respondió ${status} a las ${clock}: solo vale de 200 a 299, y no se siguen las redirecciones.`,
    failed: (clock, reason) => `Sin respuesta hasta las ${clock}: ${reason}.`,
  },
};
