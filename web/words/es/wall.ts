// In Spanish: the wall screen.
import type { wall as english } from '../en/wall.ts';

export const wall: typeof english = {
  wall: {
    title: 'Pantalla de pared',
    step: 'Seguir',
    stay: 'Quedarse aquí',
    pageOf: (page, pages) => `${page} de ${pages}`,
    refused: 'Este enlace de pared ya no vale.',
    refusedWhat: 'Un responsable crea uno nuevo en Ajustes.',
    asking: 'Abriendo la pantalla de pared…',
    unreached: 'Sin conexión con el servicio. Lo intenta de nuevo por sí misma.',
    noChambers: 'Aún no se ha añadido ninguna cámara.',
  },
};
