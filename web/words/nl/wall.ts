// In Dutch: the wall screen.
import type { wall as english } from '../en/wall.ts';

export const wall: typeof english = {
  wall: {
    title: 'Wandscherm',
    step: 'Verder',
    stay: 'Hier blijven',
    pageOf: (page, pages) => `${page} van ${pages}`,
    refused: 'Deze wandlink is niet meer geldig.',
    refusedWhat: 'Een beheerder maakt een nieuwe onder Instellingen.',
    asking: 'Het wandscherm wordt geopend…',
    unreached: 'Geen verbinding met de dienst. Hij probeert het zelf opnieuw.',
    noChambers: 'Er is nog geen tent toegevoegd.',
  },
};
